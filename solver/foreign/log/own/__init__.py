"""Our own files: the filled-in workbook and the log's document."""
