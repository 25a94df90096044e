"""Kinds of files, one a module, named by its ending."""
