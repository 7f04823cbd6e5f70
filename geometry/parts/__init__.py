"""Parts as boxes and outlines: which is in front, under a point or within another; uses the outlines."""
