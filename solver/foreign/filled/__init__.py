"""What was done, read back from a filled-in workbook."""
