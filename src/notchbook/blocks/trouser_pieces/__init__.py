"""The trousers as pieces: measures read, outlines named, seams, notches, promises and notes."""
