"""The words all rooms speak: the job, lengths and units, the job file, errors. No Qt, no shapely."""
