"""The window and the person in front of it, for the tests of this folder."""

from tests.desktop.finishing import example_on_finish, wall_on_finish
from tests.window import app, person

__all__ = ["app", "example_on_finish", "person", "wall_on_finish"]
