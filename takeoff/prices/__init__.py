"""Reads price lists of shops and gives their prices to packs; uses shared only."""
