"""`setwright book`: the book itself looked after."""
