"""The page Finish: surfaces, build-ups, products, cautions; uses the canvas and the fields."""
