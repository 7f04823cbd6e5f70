"""Opens a job: it is read, and checked so that everything after can rely on it."""

from pathlib import Path

from geometry.checking import check_outlines
from shared.checks.job import check_job
from shared.errors import JobError
from shared.files.job import JobFile, read_job_file
from shared.job import Job


def open_job(path: Path) -> JobFile:
    """The job file at this path. Its job is checked: it agrees with itself and every outline can be measured.

    FileError if the file cannot be read, JobError if a check fails. Both name the file.
    """
    job_file = read_job_file(path)
    try:
        check_measurable(job_file.job)
    except JobError as trouble:
        raise trouble.within(str(path)) from trouble
    return job_file


def check_measurable(job: Job) -> None:
    """Check that a job can be measured. JobError if it cannot, and OutlineError if that is because of an outline."""
    check_job(job)
    check_outlines(job)
