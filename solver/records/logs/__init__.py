"""A client's log read from the book and written to it: sessions at hand, checks, paces."""
