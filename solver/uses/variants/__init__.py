"""Variants of a template: which cells there are, each cell's key, where results stand, and who works on them."""
