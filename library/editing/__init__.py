"""Editing: changes of the book, worked into its files so that only what was changed changes."""
