"""Calculations filled from the book: what was typed, what the entry gives, and the answer."""
