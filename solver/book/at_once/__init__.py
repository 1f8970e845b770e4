"""What the book holds of every client, read with as many queries for a hundred clients as for one."""
