"""Edits of shapes: copied, split, reshaped, lined up, moved along; uses what is seen and the set-out."""
