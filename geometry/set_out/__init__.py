"""What the readings of a face say together, and which of them to doubt; uses outlines and parts."""
