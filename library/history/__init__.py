"""History: the book in a git work tree; who changed what, one commit for a save, pull and push."""
