"""Words and small tables that several kinds of sheet share."""
