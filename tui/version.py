"""The version of this program, in one place that costs nothing to read."""

__version__ = "0.1.0"
