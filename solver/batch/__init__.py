"""The act that a worker is sent: one variant solved and written as a document."""
