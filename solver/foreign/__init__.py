"""Weeks that were made elsewhere, read from CSV or JSON."""
