"""Notation, dilution and volumes of liquids."""
