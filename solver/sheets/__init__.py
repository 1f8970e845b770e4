"""Values to text or bytes, one module per format."""
