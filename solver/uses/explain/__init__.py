"""Why a week is as it is, and what it would be otherwise."""
