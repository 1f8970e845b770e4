"""What more time, another goal or another brief would buy."""
