"""Drawings made of characters: pure functions from a figure to lines of text."""
