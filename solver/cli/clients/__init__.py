"""`setwright client`: the people of the book."""
