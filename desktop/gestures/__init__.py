"""What the hand does on a face: pick, drag, box, trace, round. Points come in millimetres; no view is needed."""
