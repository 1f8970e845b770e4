"""Tables of sets: their headings, their rows, and the sessions that the rows make."""
