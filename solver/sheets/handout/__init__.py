"""What a client is handed, as values, and the list of formats."""
