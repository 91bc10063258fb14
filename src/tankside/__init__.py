"""Plans, leads and learns from developing your own black-and-white film."""

__version__ = "0.1.0"
