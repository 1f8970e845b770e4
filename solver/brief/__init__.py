"""What is asked: the brief, its phrase, its file and its defaults."""
