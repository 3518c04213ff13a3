"""Keeping a tool in use: what a sharpening takes away, and how many are left."""
