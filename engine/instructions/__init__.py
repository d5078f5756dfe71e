"""Instructions over sizes that a stranger can knit from, of one plan."""
