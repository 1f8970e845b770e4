"""Searches that start from a solved week: other weeks, the nearest week, the shortest week."""
