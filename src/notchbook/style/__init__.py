"""Manipulations: one step a file, found by its name and imported when used."""
