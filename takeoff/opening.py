"""Opening a job: read, and checked so that everything after can rely on it."""

from pathlib import Path

from geometry.checking import check_outlines
from shared.checks.job import check_job
from shared.errors import JobError
from shared.files.job import JobFile, read_job_file
from shared.job import Job


def open_job(path: Path) -> JobFile:
    """The job file at this path, if the job in it holds together and every outline can be measured.

    FileError where it cannot be read, JobError where it contradicts itself; both name the file.
    """
    job_file = read_job_file(path)
    try:
        check_measurable(job_file.job)
    except JobError as trouble:
        raise trouble.within(str(path)) from trouble
    return job_file


def check_measurable(job: Job) -> None:
    """Pass a job that can be measured. JobError for any other, OutlineError where it is an outline."""
    check_job(job)
    check_outlines(job)
