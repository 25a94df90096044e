"""Whatever is asked of a sleeve within reason: its seams walk and its pieces are sound."""

from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from notchbook.pattern import Pattern, pattern_to_data, walk_seam
from notchbook.recipe import remove_step, replay
from support.skirt_judge import Judge
from support.sleeve_bodies import woman
from support.sleeve_styles import plain, raglan
from support.yoke_skirt import with_steps

BODY = woman()


def millimeters(least: float, most: float) -> st.SearchStrategy[str]:
    """An amount in mm."""
    return st.integers(round(least), round(most)).map(lambda value: f"{value} mm")


def shaped(operation: str, length: str, **parameters: Any) -> Pattern:
    """The drafted sleeve of the woman with one step."""
    drafted = plain(length)
    done = replay(with_steps(drafted.recipe, (operation, "step", parameters), base=BODY), BODY, drafted)
    assert done.suspended is None, str(done.suspended)
    return done.pattern


def sound(pattern: Pattern) -> None:
    """Every seam walks and every piece is a simple outline."""
    for seam in pattern.seams.values():
        assert abs(walk_seam(pattern, seam).misfit) < 0.05, seam.name
    judge = Judge(pattern_to_data(pattern))
    assert all(judge.polygon(name).is_valid for name in pattern.pieces)


@settings(max_examples=8, deadline=None)
@given(bend=millimeters(0, 40), forearm=millimeters(0, 35), hind=millimeters(0, 30), hem=millimeters(0, 20))
def test_a_two_piece_sleeve_walks(bend: str, forearm: str, hind: str, hem: str) -> None:
    shifts = {"forearm_shift": forearm, "hind_arm_shift": hind, "hind_arm_hem": hem}
    sound(shaped("two_piece_sleeve", "long", bend=bend, **shifts))


@settings(max_examples=6, deadline=None)
@given(
    ratio=st.floats(1.1, 2.5),
    height=millimeters(0, 60),
    slashes=st.integers(2, 6),
    opens=st.sampled_from(["cap", "hem", "both"]),
)
def test_a_puff_goes_into_its_armhole(ratio: float, height: str, slashes: int, opens: str) -> None:
    sound(
        shaped(
            "puff_sleeve", "short", ratio=ratio, cap_height=height, slashes=slashes, opens=opens, hem="plain"
        )
    )


@settings(max_examples=5, deadline=None)
@given(front=millimeters(10, 70), back=millimeters(5, 45), above=millimeters(0, 35))
def test_a_raglan_walks(front: str, back: str, above: str) -> None:
    drafted = raglan()
    recipe = remove_step(drafted.recipe, drafted.recipe.steps[-1].id)
    asked = {"front_neck": front, "back_neck": back, "above": above}
    done = replay(with_steps(recipe, ("raglan_sleeve", "step", asked), base=BODY), BODY, drafted)
    assert done.suspended is None, str(done.suspended)
    sound(done.pattern)
