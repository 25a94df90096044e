"""The house's checks: one a file, named like its id."""
