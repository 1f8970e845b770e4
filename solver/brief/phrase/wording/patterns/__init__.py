"""What a whole clause of a natural sentence says, by patterns whose names must stand in the catalogue."""
