"""A face put together as a drawing, with its sizes and set-out lines; uses the takeoff."""
