"""Bounds of the parameters that the steps of sleeves have in common."""

MOST_RATIO = 4.0
"""More cloth than this cannot be drawn in to one cap. Own judgment."""

MOST_SLASHES = 12
"""More strips of half a sleeve are narrower than a pencil line is worth. Own judgment."""
