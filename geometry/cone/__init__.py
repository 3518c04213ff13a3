"""Cones: countersinks, chamfers and the shoulders of step drills."""
