"""Photos made square to a face by marks on them; uses the set-out."""
