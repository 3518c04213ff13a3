"""The book: entries, families, materials, cautions and sources, read from layers of TOML files."""
