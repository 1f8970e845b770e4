"""The week as CSV, Markdown, calendar and JSON files."""
