"""What is counted: areas, joints, masking, tables, and why. No Qt, no shapely."""
