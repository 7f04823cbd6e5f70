"""Things to look at on faces and between them, and how they are mended; uses surfaces and edges."""
