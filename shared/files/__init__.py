"""Files of jobs and finishes, read and written whole or not at all; uses the checks and the edits."""
