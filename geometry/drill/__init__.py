"""The point of a drill, and relief against the feed."""
