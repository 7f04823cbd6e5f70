"""The words that every room speaks: the job, drawings, things to look at, errors; uses no other room."""
