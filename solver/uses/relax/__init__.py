"""The smallest changes of an impossible brief that make it possible."""
