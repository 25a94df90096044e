"""What is to be asked about a set of measures before it is used."""
