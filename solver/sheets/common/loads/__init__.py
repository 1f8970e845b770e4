"""Loads and ramp-up sets in words."""
