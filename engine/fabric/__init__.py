"""The fabric: yarn, swatch, tension mark, and the stitches and rounds that follow."""
