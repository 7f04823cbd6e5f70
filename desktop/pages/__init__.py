"""What a page of the window is, and which page is open; uses the canvas and the state."""
