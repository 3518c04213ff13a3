"""Files: reading a file to change it, and saving it so that it is the old text or the new, never half."""
