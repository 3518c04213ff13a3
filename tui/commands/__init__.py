"""The plain commands: the same book and worksheets without a screen."""
