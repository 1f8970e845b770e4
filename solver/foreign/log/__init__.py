"""Training logs read from files: this tool's own workbook, table and document, and any table of sets."""
