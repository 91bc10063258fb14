"""Where a number comes from."""
