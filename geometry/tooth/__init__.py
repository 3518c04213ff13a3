"""One tooth seen along the axis: its land, and what falls away behind its edge."""
