"""Looking over measures: what in them may be a slip, and what is said of it."""
