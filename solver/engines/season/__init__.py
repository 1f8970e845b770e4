"""A season by CP-SAT: blocks chosen over weeks, each by what its week can be worth at most (HiGHS)."""
