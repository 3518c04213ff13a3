"""Units: parse what a person types into numbers, and format numbers for a reader."""
