"""The terminal face: one file per noun."""
