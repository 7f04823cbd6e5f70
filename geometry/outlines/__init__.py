"""Sides and outlines measured exactly, arcs included; uses the job only."""
