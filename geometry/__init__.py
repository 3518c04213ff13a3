"""Pure mathematics of cutting tools: plain floats in, plain floats out.

Lengths are millimetres and angles radians, everywhere and without exception; speeds are millimetres
per second and rotations radians per second. Nothing here reads a file, knows the name of a unit, or
imports anything of ``library`` or ``tui``.
"""
