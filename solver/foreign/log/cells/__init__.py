"""Single cells of a log as people type them: dates, loads, repetitions, sets in a diary's notation."""
