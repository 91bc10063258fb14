"""Distributions, intervals and where a doubt comes from."""
