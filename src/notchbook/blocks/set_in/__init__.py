"""The set-in sleeve in numbers: what is solved, without names and pieces."""
