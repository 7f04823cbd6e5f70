"""What is counted, as values with their reasons, and what things are called; uses shared only."""
