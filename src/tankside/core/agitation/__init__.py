"""Patterns of agitation, and the movements of the hands that they ask."""
