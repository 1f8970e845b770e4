"""Natural sentences put into the words that the clauses of a phrase know."""
