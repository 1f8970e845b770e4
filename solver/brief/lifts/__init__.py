"""What a brief knows of lifts: sets and maxima in words, and whether a load can be reckoned from them."""
