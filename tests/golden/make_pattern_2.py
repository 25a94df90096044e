"""Makes the golden pattern of the second form: inner darts, and where the ease of a seam lies; run once.

    python tests/golden/make_pattern_2.py

The shapes are invented. They are opened in the tests for ever, so the program refuses to replace them.
"""

import json
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))

from notchbook.pattern import pattern_to_data
from support.hand_upper import hand_upper

PLACE = Path(__file__).parent / "hand_upper-2.pattern.json"


def main() -> None:
    """Write the pattern beside this program."""
    if PLACE.exists():
        raise SystemExit(f"{PLACE.name} is there and is kept for ever")
    PLACE.write_text(
        json.dumps(pattern_to_data(hand_upper()), indent=1) + "\n", encoding="utf-8", newline="\n"
    )


if __name__ == "__main__":
    main()
