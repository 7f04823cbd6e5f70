"""How much of each product the work takes, with its sum; uses figures, surfaces and edges."""
