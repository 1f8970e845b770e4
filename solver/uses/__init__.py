"""What a coach does with weeks: each use takes values and gives values, and prints nothing."""
