"""A raglan: the cut lines on the bodice, the shoulder laid to the sleeve, its two halves and their seams."""
