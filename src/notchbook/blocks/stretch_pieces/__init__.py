"""The stretch blocks as pieces: what they read of body and cloth, names, seams, promises, words."""
