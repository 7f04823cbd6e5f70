"""What is counted and bought: areas, edges, needs, basket, tables, and why; uses geometry and shared."""
