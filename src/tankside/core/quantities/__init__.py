"""Amounts as a person writes and reads them, and the limits they must keep."""
