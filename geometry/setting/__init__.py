"""Setting the machine: heights, tilts and index moves."""
