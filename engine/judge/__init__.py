"""What is said of a sock: its fit, its yarn, which of several suits, what to beware of."""
