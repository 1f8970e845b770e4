"""What a log says, as documents: next loads and a client's pace."""
