"""Reads and writes files of jobs and finishes, whole or not at all; uses the checks and the edits."""
