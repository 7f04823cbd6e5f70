"""The cheapest packs that are enough; uses the needs; `packs` loads OR-Tools only when packs are chosen."""
