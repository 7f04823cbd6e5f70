"""Where things are: outlines, visible regions, edges, corners, near misses, DXF."""
