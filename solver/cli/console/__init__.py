"""The streams and the terminal: results, messages, progress, Ctrl-C."""
