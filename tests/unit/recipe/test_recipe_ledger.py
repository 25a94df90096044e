"""A step that treats names badly is caught in the act: each fault of the ledger."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from notchbook.errors import HouseFault
from notchbook.geometry import Path, Point
from notchbook.pattern import EdgeUse, Notch, Pattern, Piece, Place, Seam
from notchbook.pattern.piece import Edge, InternalLine
from notchbook.recipe import Change, StepContext, replay
from support.odd_steps import NoParameters, odd_step, register
from support.yoke_skirt import BACK, FORM_A, FRONT, run, skirt_recipe, with_steps

Work = Callable[[Pattern, StepContext, NoParameters], Change]


def fault(monkeypatch: pytest.MonkeyPatch, work: Work) -> tuple[str, object]:
    """The code and the names of the fault that such a step brings up."""
    register(monkeypatch, odd_step(work))
    recipe = with_steps(skirt_recipe(), ("odd", "odd", {}))
    with pytest.raises(HouseFault) as caught:
        replay(recipe, FORM_A)
    assert caught.value.facts["step"] == "odd-1"
    assert "odd-1" in str(caught.value)
    return caught.value.code, caught.value.facts.get("names", caught.value.facts.get("name"))


def renamed_edge(piece: Piece, old: str, new: str) -> Piece:
    return replace(piece, outline=tuple(replace(e, name=new) if e.name == old else e for e in piece.outline))


def test_a_name_that_vanishes(monkeypatch: pytest.MonkeyPatch) -> None:
    found = fault(monkeypatch, lambda pattern, _c, _p: Change(pattern.with_pieces(without=[BACK])))
    assert found[0] == "ledger-name-vanished"
    assert BACK in str(found[1])


def test_a_seam_or_notch_that_vanishes(monkeypatch: pytest.MonkeyPatch) -> None:
    def work(pattern: Pattern, _c: StepContext, _p: NoParameters) -> Change:
        return Change(pattern.with_seams(without=["skirt/side_seam"]))

    assert fault(monkeypatch, work) == ("ledger-name-vanished", ["skirt/side_seam"])


def test_a_name_in_the_manner_of_another_step(monkeypatch: pytest.MonkeyPatch) -> None:
    def work(pattern: Pattern, _c: StepContext, _p: NoParameters) -> Change:
        place = Place(f"{FRONT}/hem", f"{FRONT}/hem_center", 10.0)
        return Change(pattern.with_notches(Notch("skirt.front/extra_notch", place)))

    assert fault(monkeypatch, work) == ("ledger-foreign-name", ["skirt.front/extra_notch"])


def test_a_thing_of_another_kind(monkeypatch: pytest.MonkeyPatch) -> None:
    def work(pattern: Pattern, _c: StepContext, _p: NoParameters) -> Change:
        use = EdgeUse(f"{FRONT}/hem", f"{FRONT}/hem_center")
        piece = pattern.pieces[FRONT]
        bare = replace(piece, lines=())
        seam = Seam(f"{FRONT}/hip_line", (use,), (use,))
        return Change(pattern.with_pieces(bare).with_seams(seam))

    assert fault(monkeypatch, work) == ("ledger-kind-changed", f"{FRONT}/hip_line")


def test_a_name_declared_gone_that_lives(monkeypatch: pytest.MonkeyPatch) -> None:
    def work(pattern: Pattern, _c: StepContext, _p: NoParameters) -> Change:
        return Change(pattern, removals={f"{FRONT}/hem": "for no reason"})

    assert fault(monkeypatch, work) == ("ledger-declared-but-living", [f"{FRONT}/hem"])


def test_a_name_said_to_have_become_what_is_not_there(monkeypatch: pytest.MonkeyPatch) -> None:
    def work(pattern: Pattern, _c: StepContext, _p: NoParameters) -> Change:
        piece = renamed_edge(pattern.pieces[FRONT], f"{FRONT}/hem", f"{FRONT}/hem/whole")
        parts = (f"{FRONT}/hem/whole", f"{FRONT}/hem/rest")
        return Change(pattern.with_pieces(piece), splits={f"{FRONT}/hem": parts})

    assert fault(monkeypatch, work) == ("ledger-heir-missing", [f"{FRONT}/hem/rest"])


def test_a_name_that_stands_for_two_things(monkeypatch: pytest.MonkeyPatch) -> None:
    def work(pattern: Pattern, _c: StepContext, _p: NoParameters) -> Change:
        line = InternalLine("odd.front/line", Path.line(Point(-50.0, 0.0), Point(-20.0, 0.0)))
        piece = pattern.pieces[FRONT]
        return Change(pattern.with_pieces(replace(piece, lines=(*piece.lines, line, line))))

    assert fault(monkeypatch, work) == ("ledger-name-twice", ["odd.front/line"])


def test_two_corners_of_one_name(monkeypatch: pytest.MonkeyPatch) -> None:
    def work(pattern: Pattern, _c: StepContext, _p: NoParameters) -> Change:
        piece = pattern.pieces[BACK]

        def called(edge: Edge) -> Edge:
            ends = {f"{BACK}/hem_center": f"{BACK}/hem_side"}
            return replace(edge, start=ends.get(edge.start, edge.start), end=ends.get(edge.end, edge.end))

        squeezed = replace(piece, outline=tuple(called(edge) for edge in piece.outline))
        return Change(pattern.with_pieces(squeezed), merges={f"{BACK}/hem_center": (f"{BACK}/hem_side",)})

    assert fault(monkeypatch, work) == ("ledger-name-twice", [f"{BACK}/hem_side"])


def test_a_step_that_gives_an_honest_account_passes(monkeypatch: pytest.MonkeyPatch) -> None:
    def work(pattern: Pattern, context: StepContext, _p: NoParameters) -> Change:
        piece = renamed_edge(pattern.pieces[FRONT], f"{FRONT}/hem", f"{FRONT}/hem/whole")
        place = Place(f"{FRONT}/hem", f"{FRONT}/hem_center", 10.0)
        notch = Notch(f"{context.slug}.front/notch", place)
        return Change(
            pattern.with_pieces(piece).with_notches(notch), splits={f"{FRONT}/hem": (f"{FRONT}/hem/whole",)}
        )

    register(monkeypatch, odd_step(work))
    done = run(with_steps(skirt_recipe(), ("odd", "odd", {})))
    entry = done.states[-1].entry
    assert entry.split == ((f"{FRONT}/hem", (f"{FRONT}/hem/whole",)),)
    assert set(entry.created) == {f"{FRONT}/hem/whole", "odd.front/notch"}
    assert done.pattern.groups[f"{FRONT}/hem"].by == "odd-1"
