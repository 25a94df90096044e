"""Makes the golden pattern of the fourth form, which has buttons and lines of the sewing order; run once.

    python tests/golden/make_pattern_4.py

The shapes are invented. They are opened in the tests for ever, so the program refuses to replace them.
"""

import json
import sys
from dataclasses import replace
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))

from notchbook.geometry import Path as Line
from notchbook.geometry import Point
from notchbook.pattern import InternalLine, LineKind, Mark, Operation, pattern_to_data
from support.hand_suit import hand_suit

PLACE = Path(__file__).parent / "hand_suit-4.pattern.json"

KINDS: tuple[LineKind, ...] = ("buttonhole", "stitch_line", "roll_line", "cut_line")
"""Each new kind of inner line once."""

OPERATIONS = (
    Operation("suit/stay", "prepare", "Stay the waist of the front.", ("suit.front/waist",)),
    Operation("suit/buttons", "finish", "Sew the button on.", ("suit.front/button",), ("suit/stay",)),
)


def main() -> None:
    """Write the pattern beside this program."""
    if PLACE.exists():
        raise SystemExit(f"{PLACE.name} is there and is kept for ever")
    suit = hand_suit()
    front = suit.pieces["suit.front"]
    lines = tuple(
        InternalLine(f"suit.front/{kind}", Line.line(Point(20.0, y), Point(60.0, y)), kind)
        for kind, y in zip(KINDS, (-20.0, -50.0, -80.0, -110.0), strict=True)
    )
    button = Mark("suit.front/button", Point(40.0, -20.0), "button")
    front = replace(front, lines=(*front.lines, *lines), marks=(*front.marks, button))
    data = pattern_to_data(suit.with_pieces(front).with_operations(*OPERATIONS))
    PLACE.write_text(json.dumps(data, indent=1) + "\n", encoding="utf-8", newline="\n")


if __name__ == "__main__":
    main()
