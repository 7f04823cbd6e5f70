"""The face on the screen and the photo under it; uses gestures and painting."""
