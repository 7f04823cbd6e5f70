"""Writes numbers, lengths, packs and prices for a person; uses the job, what the trade buys, and pint."""
