"""What a week is worth: clock, stimulus, bands, rules and audit; no solver inside."""
