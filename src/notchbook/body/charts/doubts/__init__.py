"""What is to be asked about a size chart before it is used: one rule, one file."""
