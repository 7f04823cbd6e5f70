"""Puts the readings of a face together and says which of them to doubt; uses outlines and parts."""
