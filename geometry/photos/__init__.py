"""Makes photos square to a face by marks on them; uses the set-out."""
