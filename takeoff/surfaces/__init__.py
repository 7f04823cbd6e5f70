"""Areas: gross, net and coated, by finish and material; tiles; tags; uses the figures."""
