"""Shipped rows, each with its source."""
