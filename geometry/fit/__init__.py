"""Limits of size: tolerances of holes and threads, and of the tools that make them."""
