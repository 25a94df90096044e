"""Why an edge is as it is, and what moves it."""
