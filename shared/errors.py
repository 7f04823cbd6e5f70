"""The program's errors, as one small family.

    RecoatError
    |-- ReadingError      what a person typed cannot be read, or does not fit
    |-- JobError          the job's own values contradict each other or cannot be measured
    |   `-- OutlineError  an outline that encloses nothing or crosses itself
    `-- FileError         a file cannot be read or written

Each error carries `what` happened, `where`, and what to `do`. Its text puts the three on one line.
A job that can be read but holds something odd is no error: see `shared.findings`.
"""

from typing import Self

from shared.plain_text import one_line


class RecoatError(Exception):
    """Something went wrong that a person can mend.

    `what` says what happened. `where` names the place: a file, a face, a part; "" when there is none to name. `do` says
    what to do, and may be "" too.
    """

    def __init__(self, what: str, *, where: str = "", do: str = "") -> None:
        self.what = what
        self.where = where
        self.do = do
        super().__init__(what, where, do)

    def within(self, place: str) -> Self:
        """The same error, with the larger place named before its own: "job.json, face A"."""
        return type(self)(self.what, where=f"{place}, {self.where}" if self.where else place, do=self.do)

    def __str__(self) -> str:
        """The error on one line: "where: what; do.". A sign stands for each character that could upset a terminal."""
        place = f"{self.where}: " if self.where else ""
        advice = f"; {self.do}" if self.do else ""
        return one_line(f"{place}{self.what}{advice}.")


class ReadingError(RecoatError):
    """What was typed cannot be read, or what it says does not fit where it should go."""


class JobError(RecoatError):
    """The values of a job contradict each other or cannot be measured."""


class OutlineError(JobError):
    """An outline encloses nothing, crosses or touches itself, or holds a number that is not finite."""


class FileError(RecoatError):
    """A file cannot be read or written."""
