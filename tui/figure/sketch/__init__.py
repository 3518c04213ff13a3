"""Small drawings of quantities: one for each that has something to draw, its mark on the picture of the tool."""
