"""Which measure to take next, and which slips would not be noticed."""

import math

import numpy as np
import pytest

from notchbook.body import MeasureSet
from notchbook.body.population import population

women = population("women")
TAKEN = MeasureSet.from_mm(
    "Nora K. (invented)", {"height": 1650.0, "bust_girth": 930.0, "waist_girth": 800.0, "hip_girth": 1010.0}
)


def test_the_wanted_measure_itself_tells_most() -> None:
    gains = women.gain(TAKEN, women.keys, {"hip_depth": 1.0})
    assert gains[0].key == "hip_depth"
    assert [one.after for one in gains] == sorted(one.after for one in gains)
    assert 0 < gains[0].after < 6.5, "one reading leaves the scatter of the tape, 6 mm"
    assert all(one.before == gains[0].before for one in gains)
    assert all(0 <= one.share <= 1 and one.after <= one.before + 1e-9 for one in gains)


def test_what_is_wanted_more_decides() -> None:
    candidates = ("inside_leg", "shoulder_length")
    leg = women.gain(TAKEN, candidates, {"inside_leg": 1.0, "shoulder_length": 0.1})
    shoulder = women.gain(TAKEN, candidates, {"inside_leg": 0.1, "shoulder_length": 1.0})
    assert (leg[0].key, shoulder[0].key) == ("inside_leg", "shoulder_length")


def test_taken_and_unknown_measures_are_not_offered() -> None:
    gains = women.gain(TAKEN, ("height", "armscye_girth", "hip_depth", "hip_depth"), {"hip_depth": 1.0})
    assert [one.key for one in gains] == ["hip_depth"]
    assert women.gain(TAKEN, ("hip_depth",), {})[0].share == 0.0
    assert women.gain(TAKEN, (), {"hip_depth": 1.0}) == ()


def test_a_taken_measure_keeps_no_more_than_its_tape() -> None:
    known = TAKEN.with_value("hip_depth", 200.0)
    before = women.gain(known, ("outside_leg",), {"hip_depth": 1.0})[0].before
    assert 3 < before < 6


def test_the_gain_is_what_a_simulation_finds() -> None:
    """Bodies drawn from the model; what is wanted regressed on readings without and with the candidate."""
    model = women.model
    random = np.random.default_rng(8559)
    behind = random.multivariate_normal(model.mean, model.covariance, size=40_000)

    def true(key: str) -> "np.ndarray[tuple[int], np.dtype[np.float64]]":
        row = model.book[key]
        own = random.normal(size=len(behind)) * row.scatter
        return np.asarray(behind @ row.weights + row.constant + own, dtype=np.float64)

    wanted, candidate = true("inside_leg"), true("knee_depth")
    # The slack of the natural waist goes into what begins there.
    candidate = candidate - behind[:, model.slack]
    given = [true("height") + random.normal(size=len(behind)) * model.tape["height"]]
    taped = candidate + random.normal(size=len(behind)) * model.tape["knee_depth"]
    left = []
    for columns in (given, [*given, taped]):
        table = np.column_stack([np.ones(len(behind)), *columns])
        left.append(float(np.std(wanted - table @ np.linalg.lstsq(table, wanted, rcond=None)[0])))
    found = women.gain(MeasureSet.from_mm("x", {"height": 1650.0}), ("knee_depth",), {"inside_leg": 1.0})[0]
    assert (found.before, found.after) == pytest.approx(left, rel=0.02)


def test_the_blind_spot_grows_with_the_chance_and_shrinks_with_evidence() -> None:
    spots = [women.blind_spot("inside_leg", TAKEN, chance) for chance in (0.25, 0.5, 0.9)]
    assert spots == sorted(spots)
    more = TAKEN.with_value("outside_leg", 1040.0).with_value("standing_rise", 245.0)
    assert women.blind_spot("inside_leg", more) < 0.6 * spots[1]
    assert women.blind_spot("armscye_girth", TAKEN) == math.inf


def test_half_of_the_slips_as_large_as_the_blind_spot_are_seen() -> None:
    spot = women.blind_spot("calf_girth", TAKEN)
    expected = women.expect("calf_girth", TAKEN)
    assert expected is not None
    random = np.random.default_rng(1)
    clean = expected.value + random.normal(size=1000) * expected.sd
    sets = [TAKEN.with_value("calf_girth", float(value)) for value in clean + spot]
    z = [{score.key: score.z for score in record}["calf_girth"] for record in women.scores_of_many(sets)]
    seen = np.mean(np.abs(z) >= women.look_again)
    assert seen == pytest.approx(0.5, abs=0.05)
