"""Begins rooms from a few numbers: walls, rows of cabinets, benchtops; uses outlines and parts."""
