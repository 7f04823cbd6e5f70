"""Sheets, pictures and before-and-after, as files; uses the painting."""
