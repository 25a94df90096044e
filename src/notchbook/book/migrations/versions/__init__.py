"""One file for each schema, in order. A released one is never edited."""
