"""A cutting edge that stands at an angle to the axis: one relief, seen and measured in three views."""
