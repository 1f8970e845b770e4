"""Variants of a template: which variants there are, each variant's key, where results stand, and who works on them."""
