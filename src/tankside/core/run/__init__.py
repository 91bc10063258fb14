"""The live run: commands decide events, events fold to state."""
