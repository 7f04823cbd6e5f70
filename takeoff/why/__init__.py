"""Why a figure is what it is: its sum as a tree of written rows; uses the figures, the needs and the basket."""
