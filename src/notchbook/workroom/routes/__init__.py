"""The addresses of the workroom, one file for each thing that is opened."""
