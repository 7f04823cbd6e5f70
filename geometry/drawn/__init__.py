"""Finds places for names, the sheet for a drawing and its scale, and joins lines; uses the outlines."""
