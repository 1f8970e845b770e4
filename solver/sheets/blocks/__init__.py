"""The words of a block that its screens, documents and cards share, and its weeks as cards."""
