"""Puts a face together as a drawing, with its sizes and set-out lines; uses the takeoff."""
