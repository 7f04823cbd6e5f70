"""Edges, joints, masking, corners and ties: all that is counted by length; uses figures and surfaces."""
