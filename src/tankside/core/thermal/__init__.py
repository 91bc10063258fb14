"""Waters that mix, tanks that take heat, rooms that pull: all that gives T(t)."""
