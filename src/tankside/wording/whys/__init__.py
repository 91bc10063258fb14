"""The words of why a number is what it is, one file for each family of numbers."""
