"""The migrations of the book, run by :mod:`notchbook.book.migrating`."""
