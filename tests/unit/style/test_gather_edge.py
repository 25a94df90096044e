"""Gathers: so many times as long to cut, as long as before to sew, at a skirt's waist and a sleeve's cap."""

from typing import Any

import pytest

from notchbook.pattern import pattern_to_data, sewn_length, walk_seam
from notchbook.recipe import Replay, replay
from notchbook.style.fullness.figures import GATHERED_CLOTH, GATHERS, TIERS
from support.fullness import CAP_DOWN, gather_step
from support.skirt_judge import Judge, turns_both_ways
from support.sleeve_bodies import sleeve_recipe, sleeve_run, spoken_of, woman
from support.yoke_skirt import FRONT, WAISTBAND, run, skirt_recipe, stopped, with_steps

PLAIN = run(skirt_recipe(front_darts=0))
WAIST = f"{FRONT}/waist"


def gathered(**changes: Any) -> Replay:
    return run(with_steps(skirt_recipe(front_darts=0), gather_step(**changes)))


def puff(**changes: Any) -> Replay:
    base = woman()
    step = ("gather_edge", "puff", {**CAP_DOWN, "from_distance": "8 cm", **changes})
    return replay(with_steps(sleeve_recipe(base), step, base=base), base)


def test_the_table_of_ratios_is_that_of_the_trade() -> None:
    """Common practice (articles on gathering): 1.5 light, 2 standard, 2.5 to 3 full; heavy cloth 1.5 to 2,
    sheer to 3; each tier 1.5 to 2 times the one above. 20 in gathered two and a half times take 50 in."""
    assert [GATHERS[word].value for word in ("light", "standard", "full")] == [1.5, 2.0, 2.5]
    assert (GATHERED_CLOTH["heavy"].least, GATHERED_CLOTH["heavy"].most) == (1.5, 2.0)
    assert GATHERED_CLOTH["sheer"].most == 3.0
    assert (TIERS.least, TIERS.most) == (1.5, 2.0)
    assert 20.0 * GATHERS["full"].value == 50.0


@pytest.mark.parametrize(("fullness", "ratio"), [("light", 1.5), ("standard", 2.0), ("full", 2.5)])
def test_the_waist_is_so_many_times_as_long_to_cut_and_as_long_as_before_to_sew(
    fullness: str, ratio: float
) -> None:
    done = gathered(fullness=fullness)
    finished = sewn_length(PLAIN.pattern, WAIST)
    assert sewn_length(done.pattern, WAIST) == pytest.approx(finished, abs=1e-9)
    assert done.pattern.edges[WAIST].length == pytest.approx(ratio * finished, rel=0.003)
    assert done.pattern.edges[f"{FRONT}/hem"].length == pytest.approx(
        240.0 + (ratio - 1.0) * finished, abs=1e-3
    )


def test_only_the_stretch_between_the_two_places_is_gathered() -> None:
    done = gathered(from_distance="4 cm", to_distance="16 cm")
    assert done.pattern.groups[WAIST].members == tuple(
        f"{WAIST}/{role}" for role in ("near", "gathered", "far")
    )
    lengths = {role: done.pattern.edges[f"{WAIST}/{role}"].length for role in ("near", "gathered", "far")}
    finished = sewn_length(PLAIN.pattern, WAIST)
    assert lengths["near"] == pytest.approx(40.0, abs=1e-6)
    assert lengths["far"] == pytest.approx(finished - 160.0, abs=1e-6)
    assert lengths["gathered"] == pytest.approx(240.0, rel=0.005)
    judge = Judge(pattern_to_data(done.pattern))
    for role in ("near", "gathered", "far"):
        assert not turns_both_ways(judge.edges[f"{WAIST}/{role}"])


def test_what_is_sewn_on_walks_along_and_no_check_has_a_word_to_say() -> None:
    done = run(
        with_steps(
            skirt_recipe(front_darts=0), gather_step(from_distance="4 cm", to_distance="16 cm"), WAISTBAND
        )
    )
    assert all(abs(walk_seam(done.pattern, seam).misfit) < 1e-3 for seam in done.pattern.seams.values())
    no_zip = {"opening-under-hips"}
    plain = {finding.code for finding in spoken_of(PLAIN)}
    assert {finding.code for finding in spoken_of(done)} - no_zip <= plain


@pytest.mark.parametrize("share", [0.0, 0.4, 1.0])
def test_a_puffed_cap_still_goes_into_its_armhole(share: float) -> None:
    plain, done = sleeve_run(), puff(across_share=share, ratio=1.6)
    assert done.suspended is None, str(done.suspended)
    for which in ("front", "back"):
        seam = f"sleeve/{which}_armhole"
        walks = [walk_seam(found.pattern, found.pattern.seams[seam]) for found in (plain, done)]
        assert walks[1].misfit == pytest.approx(0.0, abs=1e-5)
        for old, new in zip(walks[0].stations, walks[1].stations, strict=True):
            assert (new.first, new.second) == pytest.approx((old.first, old.second), abs=1e-5)
    hems = [found.pattern.edges["sleeve.sleeve/hem"].length for found in (plain, done)]
    cap = sewn_length(plain.pattern, "sleeve.sleeve/cap_front") - 80.0
    assert hems[1] - hems[0] == pytest.approx(0.6 * share * cap, abs=1.0 if share else 1e-6)
    seams = [
        [f.pattern.edges[f"sleeve.sleeve/{w}_seam"].length for w in ("front", "back")] for f in (plain, done)
    ]
    assert seams[0] == pytest.approx(seams[1], abs=1e-6)
    assert Judge(pattern_to_data(done.pattern)).polygon("sleeve.sleeve").is_valid


def test_the_underarm_of_a_puffed_cap_stays_as_it_was() -> None:
    plain, done = sleeve_run(), puff(across_share=0.0, ratio=1.6)
    before = plain.pattern.edges["sleeve.sleeve/cap_front"].path
    after = done.pattern.edges["sleeve.sleeve/cap_front/near"].path
    for place in (0.0, 20.0, 50.0, 79.0):
        assert before.point_at(place).distance_to(after.point_at(place)) < 1e-6


def test_the_armhole_is_marked_where_the_gathers_begin() -> None:
    done = puff(across_share=0.0)
    (notch,) = [found for found in done.pattern.notches.values() if found.purpose.startswith("gathers")]
    assert notch.place.edge == "bodice.front/armhole"
    assert notch.place.amount == pytest.approx(80.0, abs=1e-6)


def test_an_unusual_ratio_for_the_cloth_is_looked_at() -> None:
    assert [note.code for note in gathered(cloth="heavy", fullness="full").notes][-1] == "gathers-unusual"
    assert [note.code for note in gathered(cloth="sheer", fullness="full").notes][-1] == "gathers-drawn-in"


@pytest.mark.parametrize(
    ("changes", "code"),
    [
        ({"from_distance": "12 cm", "to_distance": "8 cm"}, "slash-bounds"),
        ({"across_point": f"{FRONT}/hem_side"}, "slash-ends-opposed"),
        ({"across": "skirt.back/hem", "across_point": "skirt.back/hem_center"}, "slash-between-pieces"),
    ],
)
def test_refusals(changes: dict[str, Any], code: str) -> None:
    assert stopped(with_steps(skirt_recipe(front_darts=0), gather_step(**changes))) == code
