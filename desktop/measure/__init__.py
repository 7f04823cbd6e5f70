"""The page Measure: modes, reading line, details, readings, photo; uses the canvas and the gestures."""
