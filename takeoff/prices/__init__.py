"""Price lists of shops read, and their prices given to packs; uses shared only."""
