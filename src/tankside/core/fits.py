"""Least squares for the sciences."""
