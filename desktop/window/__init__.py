"""The frame round the pages: bars, strip, things to look at, menus, help; uses the folders of the pages' commands."""
