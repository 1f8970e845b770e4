"""The book: clients, their briefs, weeks and blocks, and what they did, in one SQLite file."""
