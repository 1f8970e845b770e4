"""The variants of a template, on screen and as files."""
