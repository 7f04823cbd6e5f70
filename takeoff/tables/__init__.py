"""Takeoff and basket as text, CSV, JSON, spreadsheet and shopping list; uses the figures and measures nothing."""
