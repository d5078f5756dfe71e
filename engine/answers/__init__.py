"""What each door of the engine returns, as plain data."""
