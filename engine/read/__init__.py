"""Text in: lengths, numbers, yarns and choices as people write them, and what is wrong."""
