"""The screens, the widgets and the command line."""
