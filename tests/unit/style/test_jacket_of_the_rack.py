"""The tailored jacket of the rack in small and large sizes: its hems, their lining, and what is told of it.

Figures of common practice, no source: hems 4 cm deep, the lining 2 cm above them, sewn to the turned hem
below its raw edge so that it has a little length to spare.
"""

from collections import Counter
from functools import cache

import pytest
from shapely.geometry import LineString

from lower_sheets import lower_bodies
from notchbook.app.examining import examine
from notchbook.app.rack.styles import rack_style
from notchbook.app.sewing_words import sewing_lines
from notchbook.body.charts import shipped_chart
from notchbook.finish import CutPiece, finish, production_table
from notchbook.pattern import Allowance, Pattern, Severity
from notchbook.recipe import Replay, replay
from notchbook.units import LengthStyle
from support.edge_steps import changed, skirt

BODIES = ["76", "92", "128", "medium-92", "plus-128"]
LINED = {
    "bodice.front": "lining.front",
    "bodice.back": "lining.back",
    "tailored.top_sleeve": "lining.top_sleeve",
    "tailored.under_sleeve": "lining.under_sleeve",
}


@cache
def jacket(body: str) -> Replay:
    bodies = {size.name.rsplit(maxsplit=1)[-1]: size for size in shipped_chart("women").sizes}
    done = replay(rack_style("S-212").recipe, {**bodies, **dict(lower_bodies())}[body])
    assert done.suspended is None, str(done.suspended)
    return done


@cache
def cut(body: str) -> dict[str, CutPiece]:
    return {piece.name: piece for piece in finish(jacket(body).pattern, production_table())}


def hem_line(piece: CutPiece) -> LineString:
    lines = [edge.sew.flattened(0.01) for edge in piece.edges if edge.kind == "hem"]
    return LineString([(point.x, point.y) for line in lines for point in line])


@pytest.mark.parametrize("body", BODIES)
def test_every_lining_ends_two_centimeters_above_a_hem_that_it_reaches_into(body: str) -> None:
    pieces = cut(body)
    for outer, lining in LINED.items():
        below, above = hem_line(pieces[outer]), hem_line(pieces[lining])
        # At its middle, where no pleat or facing is; toward a seam it may bend by 1/16 in (memory).
        assert below.distance(above.interpolate(0.5, normalized=True)) == pytest.approx(20.0, abs=1.6)
        (depth,) = {edge.width for edge in pieces[outer].edges if edge.kind == "hem"}
        assert 38.0 <= depth <= 51.0
        assert depth - 20.0 > 10.0, "felled 1 cm below the raw edge the lining has length to spare"


@pytest.mark.parametrize("body", BODIES)
def test_each_kind_of_note_is_told_once_and_they_are_few(body: str) -> None:
    report = examine(jacket(body))
    notes = Counter(one.code for one in report.findings if one.severity is Severity.NOTE)
    # Each measure that gave way, and each dart that is too small, is another thing to decide.
    several = {code for code, times in notes.items() if times > 1}
    assert several <= {"measure-gave-way", "dart-small"}
    assert sum(notes.values()) <= 9


def test_darts_are_told_of_on_the_pieces_that_were_drawn_and_not_again_on_their_lining() -> None:
    told = [one.where or "" for one in examine(jacket("128")).findings if one.code == "dart-small"]
    assert told
    assert not [where for where in told if where.startswith("lining")]


def test_a_fusible_without_allowances_has_no_notches_at_darts_that_are_cut_out_of_it() -> None:
    layer = cut("92")["front_fusing.front"]
    assert [notch.name for notch in layer.notches if "dart" in notch.name] == []
    assert [one.code for one in layer.findings] == []


def test_a_layer_that_is_caught_in_the_seams_is_notched_at_its_darts() -> None:
    """It is sewn as one with its piece, darts and all (common practice, no source)."""
    pattern = changed(skirt(), "interlining", pieces=["skirt.back"])
    assert [notch.name for notch in layer_of(pattern).notches if "dart" in notch.name]


def test_a_piece_that_is_cut_without_allowances_keeps_the_marks_of_its_darts() -> None:
    """A net pattern is marked at its darts: they are sewn in it (common practice, no source)."""
    pattern = skirt().pattern
    edges = [edge.name for edge in pattern.pieces["skirt.back"].outline if edge.kind != "leg"]
    bare = pattern.with_allowances(dict.fromkeys(edges, Allowance("plain", 0.0)))
    pieces = {piece.name: piece for piece in finish(bare, production_table())}
    assert [notch.name for notch in pieces["skirt.back"].notches if "dart" in notch.name]


def layer_of(pattern: Pattern) -> CutPiece:
    pieces = {piece.name: piece for piece in finish(pattern, production_table())}
    return pieces["interlining.back"]


def test_the_iron_stretches_the_forearm_of_the_cloth_but_not_of_the_lining() -> None:
    """The longer under sleeve of the lining is eased in instead (common practice, no source)."""
    texts = sewing_lines(jacket("92").pattern, LengthStyle("cm"))
    (cloth,) = [text for text in texts if "forearm" in text and "lining" not in text]
    (lining,) = [text for text in texts if "forearm" in text and "lining" in text]
    assert "stretched on" in cloth
    assert "eased in" in lining
