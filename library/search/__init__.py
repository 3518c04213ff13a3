"""Search entries of the book by words, quantities and ranges, and compare entries."""
