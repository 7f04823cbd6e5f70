"""Things to look at in what is drawn, and their mends; uses surfaces and edges."""
