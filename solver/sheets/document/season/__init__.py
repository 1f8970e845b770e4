"""A season as a document, `setwright.season/1`."""
