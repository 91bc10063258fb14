"""An invented place with an invented season, laid out through the workflows."""
