"""Style lines: their shape, the parts they make, darts that end on them, seams and notches."""
