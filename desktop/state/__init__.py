"""What is shown, as one value, its store, and work in the background; uses no other folder of the desktop."""
