"""What is possible: columns, neutral rows, engines and the search; the only importer of ortools and highspy."""
