"""The clauses that a phrase is made of, one kind a file."""
