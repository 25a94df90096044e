"""What the page is told: one typed form for each thing, and the function that fills it."""
