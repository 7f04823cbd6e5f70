"""The page Buy: basket, budget, What if; uses the canvas and the sums."""
