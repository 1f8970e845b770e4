"""Searches in processes beside the server: queued fairly, watched while they run, stopped when asked."""
