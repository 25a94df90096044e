"""Drafts: one block a file, found by its name. A block is a step that starts from measures."""
