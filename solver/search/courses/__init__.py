"""How neighbourhoods, bound and branching take turns: for weeks of short days, of few days and of many."""
