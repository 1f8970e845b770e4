"""Weeks side by side, and how sure their order is."""
