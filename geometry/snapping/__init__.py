"""Finds what a point or a dragged part snaps to; uses what is seen."""
