"""Collars: the neck that they are sewn to, how they are drawn, their layers and what is said of them."""
