"""One face counted by itself, and how sure its figures are; uses surfaces, edges and findings."""
