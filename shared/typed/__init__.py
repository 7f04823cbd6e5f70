"""Reads what a person types: lengths, rows of cabinets, walls, ways, packs; uses the job and the errors."""
