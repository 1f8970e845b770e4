"""Weeks of short days by Dantzig-Wolfe decomposition: day patterns, priced by a knapsack, in a linear program."""
