"""The days of a natural sentence: weekdays, counts, lengths, what differs from day to day, and other sport."""
