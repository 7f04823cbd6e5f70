"""Takeoff and basket as text, CSV, JSON, spreadsheet, shopping list; uses the figures, measures nothing."""
