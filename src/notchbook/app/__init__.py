"""What a patternmaker does with Notchbook: one typed function for each thing.

The command line and the workroom are thin over this layer. It alone opens the book, and it holds
the gate that refuses to print what would spoil cloth.
"""
