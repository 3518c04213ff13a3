"""What the book tells of the work itself: how a tool is ground, with which wheel, and what to do about a trouble."""
