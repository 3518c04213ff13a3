"""The shop's book of tool geometry: TOML files on disk to frozen objects, and back."""
