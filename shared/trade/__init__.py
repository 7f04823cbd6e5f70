"""What the trade knows before any job: kinds, finishes, products, tapes; uses nothing else of the project."""
