"""Pages: what a screen, a command and a sheet of paper show of the book, of an answer and of a card, made once."""
