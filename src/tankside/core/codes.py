"""Short codes on stickers and bottles, with a check character."""
