"""The window and the person in front of it, for the tests of this folder."""

from tests.window import app as app
from tests.window import person as person
