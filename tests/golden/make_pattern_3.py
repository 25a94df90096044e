"""Makes the golden pattern of the third form, which has elastics; run once.

    python tests/golden/make_pattern_3.py

The shapes are invented. They are opened in the tests for ever, so the program refuses to replace them.
"""

import json
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))

from notchbook.pattern import Elastic, pattern_to_data
from support.hand_suit import hand_suit

PLACE = Path(__file__).parent / "hand_suit-3.pattern.json"

ELASTICS = (
    Elastic(
        "suit/leg_elastic",
        "leg elastic",
        ("suit.front/leg_opening", "suit.back/leg_opening"),
        0.9,
        8.0,
        "limb",
    ),
    Elastic("suit/waist_elastic", "waist elastic", ("suit.front/waist",), 0.9, 25.0, "body", 720.0),
)
"""One that follows its edges, and one that follows the body."""


def main() -> None:
    """Write the pattern beside this program."""
    if PLACE.exists():
        raise SystemExit(f"{PLACE.name} is there and is kept for ever")
    data = pattern_to_data(hand_suit().with_elastics(*ELASTICS))
    PLACE.write_text(json.dumps(data, indent=1) + "\n", encoding="utf-8", newline="\n")


if __name__ == "__main__":
    main()
