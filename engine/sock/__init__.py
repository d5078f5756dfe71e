"""The sock: a request read, its foot rounds solved, its counts fixed."""
