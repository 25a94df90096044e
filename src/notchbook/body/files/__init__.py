"""Files of measures: reading one body or many, writing them, and what a refused file is told."""
