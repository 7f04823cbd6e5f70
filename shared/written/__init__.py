"""How numbers, lengths, packs and prices are written for a person; uses the job, what the trade buys, and pint."""
