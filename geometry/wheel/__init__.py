"""The grinding wheel."""
