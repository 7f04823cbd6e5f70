"""What is seen of a face: visible regions, edges, near misses, what fronts hang on; uses outlines and parts."""
