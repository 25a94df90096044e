"""The ease table: body, pattern, finished."""
