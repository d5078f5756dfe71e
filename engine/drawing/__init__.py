"""The sock drawn to scale."""
