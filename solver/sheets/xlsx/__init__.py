"""The week as a workbook."""
