"""The week as a JSON document: written, read back, described by a schema."""
