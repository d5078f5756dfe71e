"""In the place of the standard library's: what `importlib.invalidate_caches` asks of it."""


class MetadataPathFinder:
    """Finds no packages."""

    @classmethod
    def invalidate_caches(cls) -> None:
        """Do nothing: nothing is kept."""
