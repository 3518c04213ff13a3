"""Job cards: one sharpening from the tool on the bench to the record of what was done."""
