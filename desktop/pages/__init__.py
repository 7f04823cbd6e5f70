"""What a page of the window is, and which of them is open; uses the canvas and the state."""
