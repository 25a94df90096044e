"""Hoods and bindings: they fit their edges; a cord in a child's hood is stopped."""

from typing import Any

import pytest

from notchbook.pattern import Severity, walk_seam
from notchbook.recipe import replay
from notchbook.style.collars.strip import square_side
from support.bodice_bodies import CHILD, bodice_run, body
from support.collar_steps import (
    BUTTON_STAND,
    NECK_LENGTH_EDGES,
    after,
    code_of,
    collared,
    length_of,
    pattern_of,
    said,
    shape_of,
)
from support.edge_steps import misfits
from support.traced_steps import ARMHOLE, NECK
from support.upper_patterns import drafted

SIDE = "hood.hood"


@pytest.mark.parametrize(("panels", "pieces"), [("two", [SIDE]), ("three", [SIDE, "hood.hood_middle"])])
def test_a_hood_fits_its_neck(panels: str, pieces: list[str]) -> None:
    pattern = pattern_of(collared("hood", panels=panels))
    edges = [f"{piece}/neck_edge" for piece in pieces]
    assert length_of(pattern, *edges) == pytest.approx(length_of(pattern, *NECK_LENGTH_EDGES), abs=0.05)
    off = {name: value for name, value in misfits(pattern).items() if name.startswith("hood/")}
    assert off == pytest.approx({"hood/neck": 0.0, "hood/head_seam": 0.0}, abs=0.02)
    assert shape_of(pattern, SIDE).area > 40_000.0
    assert pattern.edges[f"{SIDE}/face"].kind == "hem"
    if panels == "three":
        assert pattern.pieces[pieces[1]].bounds.width == pytest.approx(45.0)


def test_a_hood_follows_the_head() -> None:
    """0.6 of the head girth high and 0.44 deep (common practice, no source): 34 and 25 cm on a head of 57."""
    done = collared("hood")
    plain = pattern_of(done).pieces[SIDE].bounds
    larger = replay(done.recipe, done.measures.with_value("head_girth", 620.0), done)
    wide = pattern_of(larger).pieces[SIDE].bounds
    assert plain.width == pytest.approx(0.44 * 570.0, rel=0.02)
    assert wide.height / plain.height == pytest.approx(620.0 / 570.0, rel=0.02)
    assert "hood-low" in said(collared("hood", height="28 cm"))
    assert "hood-low" not in said(done)


def test_the_seam_over_the_head_is_alike_on_uneven_sides() -> None:
    run = drafted("medium-92", "bodice")
    uneven = run.measures.with_value("neck_base_girth", run.measures.value("neck_base_girth") + 8.0, "left")
    pattern = pattern_of(replay(collared("hood").recipe, uneven))
    lengths = [length_of(pattern, f"{SIDE}/head_seam@{side}") for side in ("left", "right")]
    assert lengths[0] == pytest.approx(lengths[1], abs=0.01)


def cords(**more: float) -> list[tuple[str, Severity]]:
    child = bodice_run(body(CHILD, None, **more), wearer="children")
    done = after(child, "hood", neck=NECK, drawstring=True)
    assert done.suspended is None
    return [(one.code, one.severity) for one in done.states[-1].notes if "cord" in one.code]


def test_no_cord_in_a_young_childs_hood() -> None:
    """EN 14682: no cords at hood and neck to 7 years or 134 cm; older children to 14 years are limited."""
    assert cords() == [("hood-cord-young", Severity.STOP)]
    assert cords(height=1340.0) == [("hood-cord-young", Severity.STOP)]
    assert cords(height=1380.0) == [("hood-cord", Severity.LOOK)]
    assert "hood-cord" in said(collared("hood", drawstring=True))
    assert not {code for code in said(collared("hood")) if "cord" in code}


@pytest.mark.parametrize(("fold", "layers"), [("double", 4), ("single", 2)])
def test_a_binding_is_cut_four_times_as_wide_or_twice(fold: str, layers: int) -> None:
    """Bias cut width 4 x finished for a double fold, 2 x for a single one: 10 mm gives 40 (common
    practice)."""
    pattern = pattern_of(
        after(drafted("medium-92", "bodice"), "binding", opening="neck", width="10 mm", fold=fold)
    )
    piece = pattern.pieces["binding.binding"]
    assert piece.bounds.height == pytest.approx(10.0 * layers)
    assert piece.bounds.width == pytest.approx(0.97 * length_of(pattern, *NECK_LENGTH_EDGES), abs=0.05)
    assert len(piece.lines) == layers - 1
    assert (piece.cut, piece.grain.degrees) == ("fold", 45.0)
    assert pattern.allowances["bodice.front/neck"].allowance_class == "bound"


def test_a_binding_round_an_armhole_closes_to_a_ring() -> None:
    done = after(drafted("medium-92", "bodice"), "binding", edges=ARMHOLE)
    pattern = pattern_of(done)
    assert pattern.pieces["binding.binding"].cut == "pair"
    assert "binding/binding_end" in pattern.seams
    walk = walk_seam(pattern, pattern.seams["binding/bound"])
    assert walk.misfit == pytest.approx(0.0, abs=0.01)
    assert len(walk.stations) >= 3
    assert pattern.seams["binding/bound"].gives == "shorter", "the strip is stretched, not the armhole eased"
    (note,) = [one for one in done.states[-1].notes if one.code == "binding-strip"]
    assert note.measured == pytest.approx(2 * 0.97 * walk.second, abs=0.1)


def test_the_square_for_a_strip_is_the_root_of_its_area() -> None:
    """250 in of strip 2 in wide come from a square of 22.36 in (continuous bias, university bulletin)."""
    assert square_side(250.0 * 25.4, 2.0 * 25.4) / 25.4 == pytest.approx(22.36, abs=0.005)
    done = after(drafted("medium-92", "bodice"), "binding", edges=ARMHOLE, width="8 mm")
    (note,) = [one for one in done.states[-1].notes if one.code == "binding-strip"]
    # Two armholes, the strip 3 % shorter and cut four times 8 mm wide, measured by an outside program.
    strip = 2.0 * 0.97 * length_of(pattern_of(done), *(one["edge"] for one in ARMHOLE))
    said_side = float(note.message.rsplit("a square of ", 1)[1].split(" ", 1)[0])
    assert said_side**2 == pytest.approx(strip * 4.0 * 8.0, rel=0.002)


def test_a_binding_that_draws_in_too_much_is_told() -> None:
    """2 to 5 % on necks and armholes (common practice, no source)."""
    for share, is_told in ((0.05, False), (0.10, True)):
        done = after(drafted("medium-92", "bodice"), "binding", opening="neck", draws_in=share)
        assert ("amount-unusual" in said(done)) == is_told


def test_a_binding_from_the_fold_to_an_open_edge_has_a_free_end() -> None:
    only_front = [NECK[0]]
    pattern = pattern_of(after(drafted("medium-92", "bodice"), "binding", edges=only_front, draws_in=0.0))
    assert "binding/binding_end" not in pattern.seams
    assert pattern.edges["binding.binding/end"].kind == "plain"
    assert pattern.seams["binding/bound"].ease == pytest.approx(0.0)


@pytest.mark.parametrize("facing", ["cut_on", "separate", "none"])
def test_a_bound_neck_goes_out_to_the_edge_of_the_button_stand(facing: str) -> None:
    """The stand is 20 mm wide; a strip that ended at the center would end in the middle of the front."""
    stand = {**BUTTON_STAND, "facing": facing}
    pattern = pattern_of(
        after(after(drafted("medium-92", "bodice"), "button_stand", **stand), "binding", opening="neck")
    )
    neck = length_of(pattern, *NECK_LENGTH_EDGES)
    assert length_of(pattern, "binding.binding/lower") == pytest.approx(0.97 * (neck + 20.0), abs=0.05)
    raw = {name for name, one in pattern.allowances.items() if one.allowance_class == "bound"}
    assert "button_stand.front/lap_top" in raw
    tops = {name for name in pattern.edges if name.endswith("/facing_top")}
    assert bool(tops) is (facing != "none")
    assert tops <= raw, "folded back or sewn on, the facing is bound too"
    assert pattern.edges["binding.binding/end"].kind == "plain"
    assert walk_seam(pattern, pattern.seams["binding/bound"]).misfit == pytest.approx(0.0, abs=0.05)


@pytest.mark.parametrize(
    ("operation", "code", "parameters"),
    [
        ("hood", "hood-shallow", {"depth": "15 cm"}),
        ("hood", "hood-middle-wide", {"panels": "three", "middle": "40 cm"}),
        ("hood", "collar-outline-crosses", {"height": "25 mm"}),
        ("binding", "binding-edges-unsaid", {}),
        ("binding", "binding-edges-unsaid", {"opening": "neck", "edges": ARMHOLE}),
        ("binding", "binding-broken", {"edges": [ARMHOLE[0], NECK[1]]}),
        ("binding", "binding-short", {"opening": "neck", "width": "8 cm"}),
    ],
)
def test_they_refuse_in_words(operation: str, code: str, parameters: dict[str, Any]) -> None:
    given = {"neck": NECK, **parameters} if operation == "hood" else parameters
    assert code_of(after(drafted("medium-92", "bodice"), operation, **given)) == code
