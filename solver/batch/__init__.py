"""Variants solved by workers, and their stored weeks read again."""
