"""Colours, styles, plain text and the wording of numbers in the window; uses no other folder of the desktop."""
