"""What blocks, styles and garments need of a body, and what is asked when they do not get it."""
