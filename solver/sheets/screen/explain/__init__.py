"""Why a week is as it is, and what would happen if something were otherwise."""
