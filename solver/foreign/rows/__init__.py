"""The rows of a table, of JSON or of a workbook, and their cells as people type them."""
