"""Edges, joints, masking, corners and ties, in metres; uses figures and surfaces."""
