"""What a coach wants to know of a log: what looks wrong in it, and whether a session is known already."""
