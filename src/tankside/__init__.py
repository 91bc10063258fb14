"""Plans, leads and learns from developing your own black-and-white film."""
