"""The machine: its cylinder and needles, and where on them things are done."""
