"""What was traced follows every change of its parent: it stays in step, or is lost with the edge itself."""

from hypothesis import given, settings
from hypothesis import strategies as st

from notchbook.pattern import Pattern
from notchbook.recipe import Replay, add_step, change_step, remove_step, replay
from support.edge_steps import FRONT, applied, bodice, misfits, necks
from support.traced_steps import ARMHOLE, LINING, NECK, PARTS

IN_STEP = 0.1
"""mm: what the walk of a traced piece may be off."""


def derived() -> Replay:
    """A bodice with facings, an interfacing and a lining."""
    run = applied(bodice(), "facing", edges=NECK, interfaced=False)
    run = applied(run, "facing", edges=ARMHOLE, slug="armhole_facing")
    run = applied(run, "interfacing", pieces=["facing.front", "facing.back"])
    return applied(run, "lining", **{**LINING, "armholes": []})


def in_step(pattern: Pattern) -> bool:
    """Whether every seam of the derived pieces walks."""
    found = misfits(pattern)
    slugs = ("facing/", "armhole_facing/", "lining/", "all_in_one_facing/")
    return all(abs(misfit) <= IN_STEP for name, misfit in found.items() if name.startswith(slugs))


DERIVED = derived()


@settings(max_examples=6)
@given(depth=st.integers(5, 60), shape=st.sampled_from(["round", "v", "square"]))
def test_derived_pieces_follow_the_neckline(depth: int, shape: str) -> None:
    done = applied(DERIVED, "change_neckline", necks=necks(shape, f"{depth} mm", "round", "8 mm"))
    assert done.suspended is None, done.suspended
    assert in_step(done.pattern)
    old, new = (run.pattern.edges["facing.front/neck"].length for run in (DERIVED, done))
    assert new > old


@settings(max_examples=5)
@given(share=st.floats(0.2, 0.8))
def test_derived_pieces_follow_a_dart(share: float) -> None:
    place = {"at": {"edge": f"{FRONT}/shoulder", "from_point": f"{FRONT}/shoulder_point", "fraction": share}}
    start = applied(bodice(), "all_in_one_facing", parts=PARTS)
    done = applied(start, "transfer_dart", darts=[f"{FRONT}/bust_dart"], places=[place])
    assert done.suspended is None, done.suspended
    assert in_step(done.pattern)
    assert done.pattern.pieces["all_in_one_facing.front"].intakes == ()


@settings(max_examples=5)
@given(ease=st.integers(60, 140), lowered=st.integers(0, 30))
def test_derived_pieces_follow_the_block(ease: int, lowered: int) -> None:
    wanted = {"bust_ease": f"{ease} mm", "armhole_lowered": f"{lowered} mm"}
    recipe = change_step(DERIVED.recipe, "bodice-1", wanted, base=DERIVED.measures)
    done = replay(recipe, DERIVED.measures)
    if done.right.suspended is None:
        assert in_step(done.pattern)


def test_names_of_derived_pieces_stay_whatever_the_parent_does() -> None:
    done = applied(DERIVED, "change_neckline", necks=necks("v", "5 cm"))
    for slug in ("facing", "armhole_facing", "interfacing", "lining"):
        old, new = (
            {name for name in run.pattern.index if name.startswith((f"{slug}.", f"{slug}/"))}
            for run in (DERIVED, done)
        )
        assert old == new


def test_without_its_edge_exactly_the_facing_is_lost() -> None:
    """A cowl takes the front neck away: what was traced from it stops, what stands before it stays."""
    run = applied(bodice(), "facing", edges=ARMHOLE, slug="armhole_facing")
    run = applied(run, "facing", edges=NECK)
    cowl = {
        "center": f"{FRONT}/center_front",
        "neck": f"{FRONT}/neck",
        "neck_center": f"{FRONT}/neck_pit",
        "spread": "0 cm",
    }
    done = replay(add_step(run.recipe, "cowl", cowl, base=run.measures), run.measures)
    assert done.suspended is not None
    assert (done.suspended.step, done.suspended.error.code) == ("facing-2", "name-lost")
    assert "armhole_facing.front" in done.pattern.pieces
    healed = replay(remove_step(done.recipe, "facing-2"), run.measures)
    assert healed.suspended is None


def test_a_removed_facing_takes_exactly_its_dependants_with_it() -> None:
    done = replay(remove_step(DERIVED.recipe, "facing-1"), DERIVED.measures)
    assert done.suspended is not None
    assert done.suspended.step == "interfacing-1"
    assert done.suspended.error.code == "name-lost"
    again = replay(DERIVED.recipe, DERIVED.measures)
    assert again.key == DERIVED.key
