"""A week that life got into: what is done stands, and the rest is planned again with few changes."""
