"""Figures as values with their reasons, and the names of what they are about; uses shared only."""
