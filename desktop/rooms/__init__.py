"""Rooms and faces added, renamed, ordered; uses the fields."""
