"""Plans lifting weeks: a brief in, a proven and audited week out."""
