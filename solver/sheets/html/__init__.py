"""The week as one web page."""
