"""What a coach does with weeks: compares them, asks what time buys, and how sure the answer is."""
