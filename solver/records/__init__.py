"""A client of the book read as what is planned with: brief, blocks and weeks with the health notes put in again."""
