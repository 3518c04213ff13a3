"""Parts of screens, one file each."""
