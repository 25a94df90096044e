"""The command line: thin over ``app``. One command is one file; it loads the app when it is run."""
