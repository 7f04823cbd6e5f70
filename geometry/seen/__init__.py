"""What is seen of a face: visible regions, edges, what hangs on what, near misses; uses outlines and parts."""
