"""Edits: functions that make a new job from a job and keep what they do not touch; uses the job and the errors."""
