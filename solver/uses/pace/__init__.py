"""A client's own clock, from logged sessions: what their warm-ups, rests, changes and repetitions really take."""
