"""Drawings painted onto any painter; uses the look and the state."""
