"""Writes drawings to DXF files; uses ezdxf, which its `door` loads only when a file is written."""
