"""What every value in a job has in common."""

import msgspec


class Value(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """A value of a job: it is frozen, compared by its content, and written to the job file field by field."""
