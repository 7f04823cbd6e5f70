"""Edits: functions from a job to a job that share what they do not touch; uses the job and the errors."""
