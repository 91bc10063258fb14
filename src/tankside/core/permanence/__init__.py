"""Fixing and washing."""
