"""A center seam where the sides differ: each is square to it, and neither runs on into the other."""

from dataclasses import replace

from notchbook.app.examining import subject_of
from notchbook.checks import closures
from notchbook.checks.centers import are_reflections, centers
from notchbook.checks.junctions import junctions
from notchbook.pattern import Pattern
from support.two_sided import drafted, two_sided

SKIRT = drafted("skirt", two_sided("skirt", "hip_girth"))
CENTERS = {f"skirt.back/center_back@{side}" for side in ("left", "right")}


def test_both_edges_of_a_center_seam_stand_at_a_center() -> None:
    found = [(edge.name, end) for _, edge, end in centers(SKIRT.pattern)]
    assert {name for name, _ in found} == CENTERS
    assert sorted(found) == sorted((name, end) for name in CENTERS for end in ("start", "end"))


def test_a_center_seam_is_no_junction() -> None:
    seams = {found.walked.seam.name for found in junctions(SKIRT.pattern)}
    assert "skirt/side_seam@left" in seams
    assert "skirt/center_back" not in seams


def test_an_edge_is_its_own_reflection_on_either_side() -> None:
    assert are_reflections("a.b/c@left", "a.b/c@right")
    assert are_reflections("a.b/c", "a.b/c")
    assert not are_reflections("a.b/c@left", "a.d/c@left")


def moved(pattern: Pattern, point: str, by: float) -> Pattern:
    """The pattern with a corner of one piece moved along +x, mm."""
    piece = pattern.piece_of(point)
    place = piece.points[point]
    there = replace(place, x=place.x + by)
    outline = tuple(
        replace(edge, path=edge.path.with_start(there))
        if edge.start == point
        else replace(edge, path=edge.path.with_end(there))
        if edge.end == point
        else edge
        for edge in piece.outline
    )
    return pattern.with_pieces(replace(piece, outline=outline))


def test_centers_that_lean_are_seen_on_both_sides() -> None:
    """A planted fault: one center leans in, the other out, so that the hem still runs on across the seam."""
    subject = subject_of(SKIRT)
    assert [one.name for one in closures(subject) if not one.agrees] == []
    bent = SKIRT.pattern
    for side in ("left", "right"):
        bent = moved(bent, f"skirt.back/hem_center@{side}", 15.0)
    found = {one.name for one in closures(replace(subject, pattern=bent)) if not one.agrees}
    assert {name.partition(":")[0] for name in found} >= CENTERS
