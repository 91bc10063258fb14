"""Curves, what follows from them, and the control of a process."""
