"""Jobs opened and saved, finishes and prices taken, tables and drawings exported; uses the printing."""
