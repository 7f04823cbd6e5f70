"""How lengths, areas and money are written for a person; uses the job and pint."""
