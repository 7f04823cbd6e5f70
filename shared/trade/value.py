"""What every value in a job has in common."""

import msgspec


class Value(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """A value of a job: it is frozen, compared by its content, and written to the job file field by field."""


class NamedValue(Value, frozen=True):
    """What has an id that is its own in the job, and a name that a person gave it; "" for none."""

    id: str
    name: str

    @property
    def called(self) -> str:
        """Its name; its id where it has none."""
        return self.name or self.id
