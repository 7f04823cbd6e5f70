"""What a person types, read: lengths, rows of cabinets, walls, ways, packs; uses the job and the errors."""
