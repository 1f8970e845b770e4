"""What a log says: next loads and repetitions, estimated maxima, stalls, and what was done against what was planned."""
