"""The text of a TOML file: where each statement stands, what can be had of a broken one, and what is wrong with it."""
