"""What to load: the maximum that a set speaks of, what can be built from the kit, and what to begin with."""
