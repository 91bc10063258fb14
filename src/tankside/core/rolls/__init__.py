"""Exposed films waiting or done."""
