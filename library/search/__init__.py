"""Finding entries of the book by words, quantities and ranges, and setting entries side by side."""
