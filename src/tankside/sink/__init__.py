"""The live shell: one writer per run, broadcast to every screen."""
