"""The card as a PDF file."""
