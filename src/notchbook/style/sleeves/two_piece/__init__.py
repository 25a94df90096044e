"""A sleeve of two pieces: its folds, its seams beside them, the top and the under sleeve."""
