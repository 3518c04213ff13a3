"""Screw threads and the taps that cut them."""
