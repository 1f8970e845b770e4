"""Weeks over time on screen: clients, blocks, logs."""
