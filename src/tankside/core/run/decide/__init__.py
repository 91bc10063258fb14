"""From a command and an instant to events, one file per family of commands."""
