"""The search for a good week and for a bound that no week can pass."""
