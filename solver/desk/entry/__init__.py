"""Who may enter the desk: tokens, cookies, passwords, codes for phones, and what a request must bring."""
