"""Writes lengths, areas and money for a person; uses the job and pint."""
