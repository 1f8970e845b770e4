"""`setwright block`: several weeks planned, kept, shown, and gone on with from the log."""
