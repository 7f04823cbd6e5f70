"""Fields, rows of forms, cards and lists that pages are made of; uses the look and the state."""
