"""What the truing steps share: seams and notches found by name, an edge made longer or shorter at one end."""
