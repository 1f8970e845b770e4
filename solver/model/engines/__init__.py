"""The two engines that the neutral rows are handed to."""
