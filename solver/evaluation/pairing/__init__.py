"""Two exercises done in turn: which may be, and what partners take from each other."""
