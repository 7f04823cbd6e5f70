"""Edits of shapes: copy, split, reshape, line up, move along, set out; uses what is seen and the set-out."""
