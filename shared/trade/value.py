"""What all parts of a job are."""

import msgspec


class Value(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """Frozen, compared by content, written to the job file field by field."""
