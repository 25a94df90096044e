"""The rack: styles that come with the program, each a recipe to begin with. They are invented."""
