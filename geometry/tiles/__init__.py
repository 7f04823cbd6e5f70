"""Counts tiles over a visible region, whole and cut, and their grout lines; uses what is seen."""
