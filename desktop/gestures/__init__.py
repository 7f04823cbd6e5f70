"""What the hand does on a face, from points in millimetres to one edit; uses no view."""
