"""The neutral linear model: what may be chosen, as columns, and what the rules say of it; no solver inside."""
