"""The program's version, as it was installed. A module of its own, since asking for it is slow and seldom needed."""

from importlib.metadata import version

VERSION = version("recoat")
