"""Rows of figures that unfold into their sums, for Count and Buy; uses the fields."""
