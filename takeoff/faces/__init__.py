"""Counts one face by itself, and says how sure its figures are; uses surfaces, edges and findings."""
