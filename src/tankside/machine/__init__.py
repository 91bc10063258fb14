"""The clock, dice, data folder: what only the machine knows."""
