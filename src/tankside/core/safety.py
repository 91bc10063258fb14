"""Cautions by substance and strength."""
