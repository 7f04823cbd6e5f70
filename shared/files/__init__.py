"""Reads and writes files of jobs and finishes, whole or not at all; uses the checks, the edits and what is written."""
