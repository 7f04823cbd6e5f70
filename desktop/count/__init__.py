"""The page Count: the takeoff beside the face; uses the canvas and the sums."""
