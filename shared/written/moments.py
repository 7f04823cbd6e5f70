"""Writes a moment: when somebody opened a job, or saved it."""

from datetime import datetime


def moment_words(moment: datetime, now: datetime) -> str:
    """The time of day, with the date unless it is today's: "14:32", "14:32 on 2026-03-09"."""
    time = f"{moment:%H:%M}"
    return time if moment.date() == now.date() else f"{time} on {moment.date().isoformat()}"
