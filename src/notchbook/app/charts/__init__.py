"""Size charts and foreign tables: edited, read, imported."""
