swatches = With two or more swatches, a count may move by one. With one, or with a tension you gave, none moves.
