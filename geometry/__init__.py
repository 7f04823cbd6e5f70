"""Where things are: outlines, visible regions, edges, set-out, DXF; uses shapely, numpy, ezdxf and shared."""
