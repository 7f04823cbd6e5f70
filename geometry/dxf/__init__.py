"""DXF files written from drawings; uses ezdxf, which its `door` loads only when a file is written."""
