"""Whole screens, one file each."""
