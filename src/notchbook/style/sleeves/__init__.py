"""What the steps of sleeves share: the sleeve found, its slashes, gathers, seams of two pieces, cuffs."""
