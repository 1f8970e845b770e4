"""What a week is worth: clock, curves and a printed week evaluated against its resolved brief; no solver inside."""
