"""Patterns of agitation as movements of the hands."""
