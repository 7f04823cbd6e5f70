"""Writes numbers, lengths, packs and prices for a person; uses the job, products and pint."""
