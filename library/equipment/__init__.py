"""The machines and wheels of the shop: what they can do, and settings in their own graduations."""
