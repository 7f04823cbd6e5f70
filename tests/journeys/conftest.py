"""The window and the person in front of it, for the tests of this folder."""

from tests.journeys.hostile import desk, said
from tests.window import app, person

__all__ = ["app", "desk", "person", "said"]
