"""The published drafts of tests/reference/bodice/drafts.toml as what a bodice is drafted from; mm."""

import math
import tomllib
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from notchbook.blocks.upper.given import BodiceGiven, BustGiven

FILE = Path(__file__).parents[1] / "reference" / "bodice" / "drafts.toml"


def published() -> dict[str, Any]:
    """The file as it is, cm."""
    return tomllib.loads(FILE.read_text(encoding="utf-8"))


@dataclass(frozen=True)
class EastDraft:
    """The formulas of T3, mm: inputs and what its drawing shows."""

    bust: float
    waist: float
    back_length: float
    tuned_on: bool = False

    @property
    def half_bust(self) -> float:
        """B/2 + 6 cm."""
        return self.bust / 2.0 + 60.0

    @property
    def half_waist(self) -> float:
        """W/2 + 3 cm."""
        return self.waist / 2.0 + 30.0

    @property
    def armhole_depth(self) -> float:
        """B/12 + 13.7 cm, from the nape."""
        return self.bust / 12.0 + 137.0

    @property
    def back_width(self) -> float:
        """B/8 + 7.4 cm."""
        return self.bust / 8.0 + 74.0

    @property
    def chest_width(self) -> float:
        """B/8 + 6.2 cm."""
        return self.bust / 8.0 + 62.0

    @property
    def front_neck_width(self) -> float:
        """B/24 + 3.4 cm."""
        return self.bust / 24.0 + 34.0

    @property
    def front_neck_depth(self) -> float:
        """0.5 cm more than its width."""
        return self.front_neck_width + 5.0

    @property
    def back_neck_width(self) -> float:
        """0.2 cm more than in front."""
        return self.front_neck_width + 2.0

    @property
    def front_height(self) -> float:
        """B/5 + 8.3 cm: the side-neck point above the armhole line."""
        return self.bust / 5.0 + 83.0

    @property
    def dart(self) -> float:
        """(B/4 - 2.5) degrees, B in cm."""
        return self.bust / 40.0 - 2.5

    @property
    def half_neck(self) -> float:
        """Half the neck as two quarters of ellipses: the drawing gives widths and depths, not the length
        (own reckoning, Ramanujan's first approximation)."""
        front = quarter_ellipse(self.front_neck_width, self.front_neck_depth)
        return front + quarter_ellipse(self.back_neck_width, self.back_neck_width / 3.0)

    def given(self) -> BodiceGiven:
        """The draft as ours is given it: all eases are in its own formulas."""
        below = self.back_length - self.armhole_depth
        point_x = self.chest_width / 2.0 + 7.0  # the bust point lies 0.7 cm beyond the middle of the chest
        to_point = math.hypot(point_x - self.front_neck_width, self.front_height)
        shoulder = (self.chest_width - self.front_neck_width) / math.cos(math.radians(22.0)) + 18.0
        return BodiceGiven(
            bust=2.0 * self.half_bust,
            waist=2.0 * self.half_waist,
            across_back=2.0 * self.back_width,
            across_chest=2.0 * self.chest_width,
            neck=2.0 * self.half_neck,
            shoulder=shoulder,
            shoulder_slope=20.0,
            scye_depth=self.armhole_depth,
            back_length=self.back_length,
            bust_shape=BustGiven(
                front_length=to_point + below,
                center_front=self.front_height - self.front_neck_depth + below,
                neck_to_bust_point=to_point,
                point_width=2.0 * point_x,
            ),
            back_shoulder_amount=self.bust / 32.0 - 8.0,
        )


def east_drafts() -> list[EastDraft]:
    """The sizes of T3 that are compared."""
    return [
        EastDraft(
            10.0 * row["bust"], 10.0 * row["waist"], 10.0 * row["back_length"], row.get("tuned_on", False)
        )
        for row in published()["east"]
    ]


def west_given() -> BodiceGiven:
    """T6 as ours is given it."""
    row = {key: 10.0 * value for key, value in published()["west"].items()}
    return BodiceGiven(
        bust=row["bust"] + row["bust_ease"],
        waist=row["waist"] + row["waist_ease"],
        across_back=row["across_back"],
        across_chest=row["chest_without_half_dart"],
        neck=row["neck"],
        shoulder=row["shoulder"],
        shoulder_slope=row["slope"] / 10.0,
        scye_depth=row["scye_depth"],
        back_length=row["back_length"],
        bust_shape=BustGiven(
            row["front_length"], row["center_front"], row["neck_to_bust_point"], row["bust_point_width"]
        ),
    )


def quarter_ellipse(width: float, depth: float) -> float:
    """A quarter of an ellipse with these half axes."""
    whole = 3.0 * (width + depth) - math.sqrt((3.0 * width + depth) * (width + 3.0 * depth))
    return math.pi * whole / 4.0
