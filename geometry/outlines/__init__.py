"""Measures sides and outlines exactly, arcs included; uses the job only."""
