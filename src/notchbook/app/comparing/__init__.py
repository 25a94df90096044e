"""One thing held against another, in words: bodies, charts, a style and a client, two styles."""
