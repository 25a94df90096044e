"""A studio's own step and block, as an example."""
