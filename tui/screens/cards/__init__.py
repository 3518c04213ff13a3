"""The screens of job cards: the list, the card itself, its setup sheet, the life of a tool, the plan of a batch."""
