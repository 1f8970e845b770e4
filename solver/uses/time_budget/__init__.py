"""What more or less time does to a week."""
