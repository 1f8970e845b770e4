"""`setwright variants` and its commands."""
