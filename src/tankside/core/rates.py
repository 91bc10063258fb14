"""Factor of a rate per 10 K."""
