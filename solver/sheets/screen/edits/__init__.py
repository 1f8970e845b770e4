"""Changes of a week: what they do, what may be swapped, which single ones win most."""
