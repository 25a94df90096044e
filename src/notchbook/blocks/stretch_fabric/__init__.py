"""Stretch cloth: its classes, its test, and by how much a garment of it is smaller than the body."""
