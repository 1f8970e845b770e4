"""A span of weeks laid out in training blocks: what is specialised when, and what is held."""
