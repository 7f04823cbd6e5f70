"""Where names stand, which sheet a drawing goes on and at which scale; uses the outlines."""
