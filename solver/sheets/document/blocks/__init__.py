"""A block's document: its models, written and read."""
