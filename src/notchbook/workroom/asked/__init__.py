"""What the page may ask: edits as it sends them, and how typed text is read."""
