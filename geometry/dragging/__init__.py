"""Arranges a face while parts of it are dragged: only what moves is arranged anew; uses what is seen."""
