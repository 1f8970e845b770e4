"""A brief read from one line of text."""
