"""The command line: `recoat`. It imports no Qt unless a window, a PDF or a picture is asked for.

Each command imports what it needs when it is called, so that no command waits for what only another needs.
"""

import argparse
import io
import os
import sys
from collections.abc import Callable, Sequence
from datetime import datetime
from importlib.resources import files
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

from shared.errors import FileError, JobError, RecoatError
from shared.files.disk import file_error, write_atomically
from shared.plain_text import one_line

if TYPE_CHECKING:
    from shared.job import Face, Job
    from takeoff.bill import Bill
    from takeoff.figures.measured import Takeoff

DONE, FOUND, FAILED, STOPPED = 0, 1, 2, 130
"""Exit codes. DONE: all went well. FOUND: `check` found something to look at. FAILED: an error, told in one line.
STOPPED: by Ctrl+C, as shells number it."""

Command = Callable[[argparse.Namespace], int]


class CommandError(RecoatError):
    """The command line asks for something that does not exist or cannot be done."""


class Parser(argparse.ArgumentParser):
    """A parser that tells an error in one line."""

    def error(self, message: str) -> NoReturn:
        """Raise CommandError, which says what is wrong with the command line."""
        raise CommandError(message, do=f"see {self.prog} --help")


class ShowVersion(argparse.Action):
    """Show the version and exit."""

    def __call__(self, parser: argparse.ArgumentParser, *_: object) -> NoReturn:
        from shared.files.version import VERSION

        print(f"recoat {VERSION}")
        parser.exit(DONE)


def main(argv: Sequence[str] | None = None) -> int:
    """Do one command, and give its exit code. Errors are told in one line. `argv` is by default the program's."""
    arguments = list(sys.argv[1:] if argv is None else argv)
    try:
        asked = _parser().parse_args(_with_command(arguments))
        command: Command = asked.command
        return command(asked)
    except RecoatError as trouble:
        return _tell(str(trouble))
    except BrokenPipeError:
        _close_output()
        return _tell("the program that reads the output has stopped; write the output to a file with -o.")
    except OSError as trouble:
        return _tell(str(file_error(Path(trouble.filename or "standard output"), trouble)))
    except ImportError as trouble:
        return _tell(f"a library that this needs cannot be loaded ({trouble}); make run installs what is missing.")
    except KeyboardInterrupt:
        _tell("stopped.")
        return STOPPED


def _tell(words: str) -> int:
    print(f"recoat: {one_line(' '.join(words.split()))}", file=sys.stderr)
    return FAILED


def _close_output() -> None:
    """Point standard output at nothing, so that what is left in it does not fail again at exit."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


COMMANDS = ("open", "takeoff", "buy", "draw", "check", "schema", "example", "convert")


def _with_command(arguments: list[str]) -> list[str]:
    """The arguments, with "open" put first if they are a file or none. CommandError if they name an unknown command."""
    if arguments and (arguments[0] in COMMANDS or arguments[0].startswith("-")):
        return arguments
    if len(arguments) > 1:
        raise CommandError(f'there is no command "{arguments[0]}"', do=f"the commands are {', '.join(COMMANDS)}")
    return ["open", *arguments]


def _parser() -> Parser:
    parser = Parser(
        prog="recoat",
        description="Draw a kitchen from tape readings and see what there is to coat, mask, seal and buy.",
    )
    parser.add_argument("--version", action=ShowVersion, nargs=0, help="show the program's version and exit")
    add = parser.add_subparsers(metavar="COMMAND", required=True).add_parser
    opened = _command(add, "open", _open, "open the window; name a job to open it there")
    opened.add_argument("job", nargs="?", type=Path, metavar="JOB")
    takeoff = _command(add, "takeoff", _takeoff, "measure a job: areas, joints, masking, totals")
    takeoff.add_argument("job", type=Path, metavar="JOB")
    takeoff.add_argument("--format", choices=("text", "json", "csv", "xlsx"), default="text", help="default: text")
    takeoff.add_argument("--rule", default="net", metavar="NAME", help="the measuring rule for openings; default: net")
    takeoff.add_argument("--why", action="store_true", help="show the sum behind every figure, as text")
    takeoff.add_argument("-o", "--output", type=Path, metavar="FILE", help="write to this file instead of the terminal")
    buy = _command(add, "buy", _buy, "list what to buy for a job: the cheapest packs that cover it")
    buy.add_argument("job", type=Path, metavar="JOB")
    buy.add_argument("--format", choices=("text", "json", "csv", "xlsx", "html"), default="text", help="default: text")
    buy.add_argument("--prices", type=Path, metavar="LIST", help="take the prices from this price list (CSV or XLSX)")
    buy.add_argument("-o", "--output", type=Path, metavar="FILE", help="write to this file instead of the terminal")
    draw = _command(add, "draw", _draw, "draw the faces of a job to a .dxf, .pdf, .png or .svg file")
    draw.add_argument("job", type=Path, metavar="JOB")
    draw.add_argument("-o", "--output", type=Path, metavar="FILE", required=True)
    draw.add_argument("--face", metavar="NAME", help="draw only the face with this name or id")
    check = _command(add, "check", _check, "list the things to look at in a job; the exit code is 1 if there are any")
    check.add_argument("job", type=Path, metavar="JOB")
    schema = _command(add, "schema", _schema, "write the JSON Schema of the job file, or of the takeoff")
    schema.add_argument("of", nargs="?", choices=("job", "takeoff"), default="job")
    example = _command(add, "example", _example, "write the example job to a new file")
    example.add_argument("output", type=Path, metavar="FILE")
    convert = _command(add, "convert", _convert, "write a copy of a job: .json without its photos, .recoat with them")
    convert.add_argument("job", type=Path, metavar="JOB")
    convert.add_argument("-o", "--output", type=Path, metavar="JOB", required=True)
    return parser


def _command(add: Callable[..., Parser], name: str, does: Command, words: str) -> Parser:
    parser = add(name, help=words, description=words[0].upper() + words[1:] + ".")
    parser.set_defaults(command=does)
    return parser


SCREENS = ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM")
"""The variables that name a screen on Linux. If none is set, Qt would end the whole program."""


def _open(asked: argparse.Namespace) -> int:
    if asked.job is not None and not asked.job.exists():
        raise FileError("there is no such file", where=str(asked.job), do=f"commands are {', '.join(COMMANDS)}")
    if sys.platform == "linux" and not any(map(os.environ.get, SCREENS)):
        raise CommandError("there is no screen to show a window on", do="use recoat takeoff or recoat draw")
    from desktop.start import open_window

    return open_window(None if asked.job is None else str(asked.job))


def _takeoff(asked: argparse.Namespace) -> int:
    from takeoff.opening import open_job
    from takeoff.surfaces.measuring_rules import measuring_rules
    from takeoff.take_off import take_off

    if asked.rule not in measuring_rules():
        raise CommandError(
            f'there is no measuring rule "{asked.rule}"', do=f"the rules are {', '.join(measuring_rules())}"
        )
    if asked.why and asked.format != "text":
        raise CommandError(f"--why writes text, not {asked.format}", do="leave out --format or --why")
    _refuse_unshowable(asked)
    _refuse_same(asked)
    job = open_job(asked.job).job
    takeoff = take_off(job, rule=asked.rule)
    _give(_why(takeoff, job) if asked.why else _table(asked.format, takeoff, job), asked.output)
    return DONE


def _refuse_unshowable(asked: argparse.Namespace) -> None:
    if asked.format == "xlsx" and asked.output is None:
        raise CommandError("a spreadsheet cannot be shown on a terminal", do="name a file with -o")


def _give(content: bytes, output: Path | None) -> None:
    """Write this to the file that is named, or to standard output if none is."""
    if output is None:
        _show(content)
    else:
        write_atomically(output, content)


def _why(takeoff: "Takeoff", job: "Job") -> bytes:
    """The content of a file with the sum behind every figure."""
    from takeoff.bill import make_bill
    from takeoff.tables.takeoff_why import why_text

    return why_text(takeoff, job, make_bill(job, takeoff)).encode("utf-8")


def _table(form: str, takeoff: "Takeoff", job: "Job") -> bytes:
    """The content of a file with the takeoff in this format."""
    if form == "json":
        from takeoff.bill import make_bill
        from takeoff.tables.takeoff_json import takeoff_json

        return takeoff_json(takeoff, job, make_bill(job, takeoff))
    if form == "csv":
        from takeoff.tables.takeoff_csv import takeoff_csv

        return takeoff_csv(takeoff, job)
    if form == "xlsx":
        from takeoff.bill import make_bill
        from takeoff.tables.takeoff_xlsx import xlsx_bytes

        return xlsx_bytes(takeoff, job, make_bill(job, takeoff))
    from takeoff.tables.takeoff_text import takeoff_text

    return takeoff_text(takeoff, job).encode("utf-8")


def _buy(asked: argparse.Namespace) -> int:
    from takeoff.bill import make_bill
    from takeoff.opening import open_job
    from takeoff.take_off import take_off

    _refuse_unshowable(asked)
    _refuse_same(asked)
    job = open_job(asked.job).job
    if asked.prices is not None:
        job = _with_prices(job, asked.prices)
    takeoff = take_off(job)
    bill = make_bill(job, takeoff)
    told = bill.left_out if asked.format == "text" and asked.output is None else ()
    for finding in bill.findings:
        if finding.message not in told:
            _mention(finding.message)
    _give(_basket(asked.format, bill, job, takeoff), asked.output)
    return DONE


def _with_prices(job: "Job", path: Path) -> "Job":
    """The job with the prices of a list. Lines of the list that were not understood are mentioned."""
    from takeoff.prices.listed import read_price_list
    from takeoff.prices.pricing import with_prices

    prices = read_price_list(path, path.name, job)
    priced = with_prices(job, prices)
    for line in prices.report(priced.said):
        _mention(line)
    return priced.job


def _basket(form: str, bill: "Bill", job: "Job", takeoff: "Takeoff") -> bytes:
    """The content of a file with the basket in this format. JSON and spreadsheet are those of the takeoff."""
    if form in ("json", "xlsx"):
        return _table(form, takeoff, job)
    if form == "csv":
        from takeoff.tables.basket_csv import basket_csv

        return basket_csv(bill.basket, job, bill.left_out)
    if form == "html":
        from takeoff.tables.shopping_list import basket_html

        return basket_html(bill.basket, job, bill.left_out)
    from takeoff.tables.basket_text import basket_text

    return basket_text(bill.basket, job, bill.left_out).encode("utf-8")


def _mention(words: str) -> None:
    """Say something on standard error, beside the output."""
    print(one_line(words), file=sys.stderr)


def _draw(asked: argparse.Namespace) -> int:
    from desktop.printing.files import check_ending, write_drawings
    from takeoff.drawing.face import draw_face
    from takeoff.opening import open_job
    from takeoff.take_off import Memory, take_off

    check_ending(asked.output)
    _refuse_same(asked)
    job = open_job(asked.job).job
    memory = Memory()
    takeoff = take_off(job, memory)
    drawings = tuple(draw_face(job, face, takeoff, memory) for face in _faces(job, asked.face))
    write_drawings(drawings, asked.output, datetime.now().astimezone().date())
    return DONE


def _faces(job: "Job", name: str | None) -> "tuple[Face, ...]":
    """The faces with this name or id, or all if `name` is None. JobError if there are none."""
    faces = tuple(face for face in job.faces if name is None or name in (face.name, face.id))
    if not faces:
        names = ", ".join(face.name for face in job.faces)
        what = f'the job has no face "{name}"' if job.faces else "the job has no faces"
        raise JobError(what, do=f"its faces are {names}" if names else "draw one first")
    return faces


def _check(asked: argparse.Namespace) -> int:
    from takeoff.bill import make_bill
    from takeoff.figures.naming import Names
    from takeoff.opening import open_job
    from takeoff.take_off import take_off

    job = open_job(asked.job).job
    takeoff = take_off(job)
    bill = make_bill(job, takeoff)
    names, findings = Names(job), (*takeoff.findings, *bill.findings)
    lines = [one_line(f"{names.place(each.face) or each.code.place.about}: {each.message}") for each in findings]
    _show(("\n".join(lines or ["Nothing to look at."]) + "\n").encode("utf-8"))
    return FOUND if findings else DONE


def _schema(asked: argparse.Namespace) -> int:
    room, name = ("takeoff", "takeoff") if asked.of == "takeoff" else ("shared", "job")
    _show((files(room) / "data" / f"{name}.schema.json").read_bytes())
    return DONE


def _example(asked: argparse.Namespace) -> int:
    from shared.files.claim import refuse_held
    from shared.files.job import JobFile, job_from_json, write_job_file

    if asked.output.is_file():
        raise FileError(
            "this file exists already and would be overwritten", where=str(asked.output), do="name a new file"
        )
    refuse_held(asked.output)
    content = (files("desktop") / "data" / "example.json").read_bytes()
    write_job_file(asked.output, JobFile(job_from_json(content, "the example")))
    return DONE


def _convert(asked: argparse.Namespace) -> int:
    from shared.files.claim import refuse_held
    from shared.files.job import write_job_file
    from takeoff.opening import open_job

    _refuse_same(asked)
    refuse_held(asked.output)
    write_job_file(asked.output, open_job(asked.job))
    return DONE


def _refuse_same(asked: argparse.Namespace) -> None:
    """FileError if the output is one of the files that are read, under whatever name."""
    inputs = {"the job itself": asked.job, "the price list": getattr(asked, "prices", None)}
    for name, path in inputs.items():
        if asked.output is not None and path is not None and _are_same(asked.output, path):
            raise FileError(
                f"this file is {name} and would be overwritten", where=str(asked.output), do="name another file"
            )


def _are_same(one: Path, other: Path) -> bool:
    """Whether both paths lead to one file. A path that cannot be read is told of when it is read or written."""
    try:
        return one.samefile(other)
    except OSError:
        return False


def _show(content: bytes) -> None:
    """Write UTF-8 to standard output: to a file or a program as it is, to a terminal as that can show it."""
    out = sys.stdout
    if out is None:  # the program was started without one
        raise CommandError("there is no output to write to", do="name a file with -o")
    if out.isatty() and isinstance(out, io.TextIOWrapper):
        out.reconfigure(errors="replace")
        out.write("\n".join(map(one_line, content.decode("utf-8").replace("\r\n", "\n").split("\n"))))
    else:
        out.flush()
        out.buffer.write(content)
    out.flush()
