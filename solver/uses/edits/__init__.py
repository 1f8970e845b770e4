"""A week changed: one line swapped, added, cut or moved, and what that does."""
