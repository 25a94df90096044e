"""The sleeve as pieces: what it reads from body and bodice, its names, seams, promises and words."""
