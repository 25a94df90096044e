"""`notchbook client ...`: keep a client under a code, hand her data out, erase her."""
