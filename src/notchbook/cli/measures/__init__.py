"""`notchbook measures ...`: looking over, filling in and comparing measures."""
