"""Parts as boxes and outlines: what lies in front, under a point, within another; uses the outlines."""
