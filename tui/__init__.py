"""The user interface: screens, services, views, drawings and plain commands."""
