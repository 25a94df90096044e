"""Judges torso and dress from a pattern's plain data with numpy and shapely alone."""

import json
from collections.abc import Iterator, Mapping
from itertools import accumulate
from typing import Any

import numpy as np

from support.bodice_judge import BODICE, SIDE_ANGLE, Closure, UpperJudge, bodice_closures
from support.skirt_judge import length

LENGTH, ANGLE = 0.1, 1.0
"""mm and degrees by which something may miss."""

SKIRT = {"front": "bodice.skirt_front", "back": "bodice.skirt_back"}


def renamed(data: dict[str, Any], slug: str) -> dict[str, Any]:
    """The data with the block called bodice and its upper panels front and back, for the bodice's judge."""
    text = json.dumps(data).replace(f"{slug}.bodice_", "bodice.").replace(f"{slug}/bodice_", "bodice/")
    found: dict[str, Any] = json.loads(text.replace(f'"{slug}.', '"bodice.').replace(f'"{slug}/', '"bodice/'))
    return found


def one_piece_closures(data: dict[str, Any], slug: str, wanted: Mapping[str, float]) -> Iterator[Closure]:
    """What must agree where each panel runs from shoulder to hem; ``wanted`` in mm by measure."""
    judge = UpperJudge(renamed(data, slug))
    for key, word in (("waist_girth", "waist_line"), ("hip_girth", "hip_line"), ("bust_girth", "bust_line")):
        lines = [name for piece in BODICE.values() for name in judge.lines_named(piece, word)]
        yield Closure(key, 2.0 * judge.length(*lines), wanted[key], LENGTH)
    for word in ("neck", "side_seam", "shoulder"):
        longer = judge.sewn("back", word) - judge.sewn("front", word)
        if word == "neck":
            both = judge.sewn("back", word) + judge.sewn("front", word)
            yield Closure("neck", 2.0 * both, wanted["neck_base_girth"], LENGTH)
        else:
            yield Closure(f"{word} pair", longer, judge.seams[f"bodice/{word}"]["ease"], LENGTH)
    for which, piece in BODICE.items():
        yield Closure(f"{which} hem at the center", judge.corner(piece, "hem_center"), 90.0, ANGLE)
        yield Closure(f"{which} hem at the side", judge.corner(piece, "hem_side"), 90.0, ANGLE)
        for dart in judge.pieces[piece].get("inner_darts", []):
            center, side = (judge.lines[dart[leg]] for leg in ("center_leg", "side_leg"))
            for part, pair in (("above", (center[:2], side[:2])), ("below", (center[1:], side[1:]))):
                yield Closure(f"{dart['name']} {part}", length(pair[0]) - length(pair[1]), 0.0, LENGTH)
    closed = sum(judge.corner(piece, "underarm") for piece in BODICE.values())
    yield Closure("across underarm", closed, 180.0, SIDE_ANGLE)
    yield from _whole(judge)


def two_part_closures(data: dict[str, Any], slug: str, wanted: Mapping[str, float]) -> Iterator[Closure]:
    """What must agree where a skirt is sewn to the bodice, darts meeting darts."""
    judge = UpperJudge(renamed(data, slug))
    yield from bodice_closures(judge, wanted)
    for which, piece in SKIRT.items():
        for index, (above, below) in enumerate(
            zip(*(_stops(judge, panel) for panel in (BODICE[which], piece)), strict=True)
        ):
            yield Closure(f"{which} waist, stop {index}", below - above, 0.0, LENGTH)
        for name, first, second in judge.darts(piece):
            yield Closure(f"{name} legs", judge.length(first) - judge.length(second), 0.0, LENGTH)
        yield Closure(f"{which} skirt center", judge.corner(piece, "waist_center"), 90.0, ANGLE)
        for corner in ("hem_center", "hem_side"):
            yield Closure(f"{which} {corner}", judge.corner(piece, corner), 90.0, ANGLE)
    hips = 2.0 * judge.length(*(f"{piece}/hip_line" for piece in SKIRT.values()))
    yield Closure("hip_girth", hips, wanted["hip_girth"], LENGTH)
    sides = [judge.length(f"{piece}/side_seam") for piece in SKIRT.values()]
    yield Closure("skirt side pair", sides[0] - sides[1], 0.0, LENGTH)
    closed = sum(judge.corner(piece, "waist_side") for piece in SKIRT.values())
    yield Closure("across the side of the skirt", closed, 180.0, SIDE_ANGLE)
    for which, piece in SKIRT.items():
        corners = judge.corner(BODICE[which], "waist_side") + judge.corner(piece, "waist_side")
        yield Closure(f"{which} side across the waist", corners, 180.0, SIDE_ANGLE)
    yield from _whole(judge)


def _stops(judge: UpperJudge, piece: str) -> list[float]:
    """How far along the waist each dart stands, from the center, and the whole waist, mm."""
    names = sorted(judge.named(piece, "waist"), key=lambda name: abs(float(np.mean(judge.edges[name][:, 0]))))
    return list(accumulate(judge.length(name) for name in names))


def _whole(judge: UpperJudge) -> Iterator[Closure]:
    for name in judge.pieces:
        yield Closure(f"{name} in one piece", float(judge.polygon(name).is_valid), 1.0, 0.0)


def open_closures(data: dict[str, Any], slug: str, wanted: Mapping[str, float]) -> list[str]:
    """What does not agree, with by how much."""
    is_two = f"{slug}.skirt_front" in {piece["name"] for piece in data["pieces"]}
    found = two_part_closures(data, slug, wanted) if is_two else one_piece_closures(data, slug, wanted)
    return [f"{one.name} {one.miss:+.3f}" for one in found if not one.holds]
