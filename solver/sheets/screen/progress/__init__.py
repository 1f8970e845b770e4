"""What a log says, in words for a coach: next loads, stalls, what was done, and a client's pace."""
