"""Every plot, for screen, paper and notebooks."""
