"""What was done: sessions and sets as values, as they are logged, kept and read again."""
