"""The cheapest packs that cover the needs; uses the needs. `packs` loads OR-Tools only when packs are chosen."""
