"""The sections of a sock, from cuff to toe: what each is knitted on, and its size."""
