"""A shop's own threads: tables of its book, laid over the standard threads key by key."""
