"""Checks that a job holds together, whoever made it; uses the job, the limits and the errors."""
