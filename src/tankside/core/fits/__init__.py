"""Least squares: lines, curves of any form, and the one rise that levels off."""
