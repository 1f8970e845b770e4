"""One rule, or one table of rules that differ by a number and a predicate, in each file; the rulebook lists the folder."""
