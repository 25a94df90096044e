"""Darts moved by the step: angles, lengths, seams, names; shares, several darts, and what is refused."""

from typing import Any

import pytest

from notchbook.app.examining import examine
from notchbook.checks.walks import walked_seams
from notchbook.pattern import Pattern, closed_path, sewn_length, walk_seam
from notchbook.pattern.slashing import dart_angle
from notchbook.recipe import replay
from support.bodice_bodies import FULL_BUST, WOMAN, bodice_recipe, body
from support.dart_shapes import BACK, FRONT, PLACES, at, done, stopped_by, styled, transfer

NEW = "transfer_dart.front/bust_dart"
PLAIN = done()


def angle_about_bust(pattern: Pattern, dart: str) -> float:
    piece = pattern.pieces[FRONT]
    return dart_angle(piece, piece.intake(dart), piece.points[f"{FRONT}/bust_point"])


WHOLE = angle_about_bust(PLAIN, f"{FRONT}/bust_dart")


@pytest.mark.parametrize("place", PLACES)
def test_the_bust_dart_goes_to_every_place(place: str) -> None:
    run = styled(transfer(place))
    assert run.suspended is None
    pattern = run.pattern
    # 0.1 degrees: what truing the edge on both sides of the mouth may move.
    assert angle_about_bust(pattern, NEW) == pytest.approx(WHOLE, abs=0.1)
    assert f"{FRONT}/bust_dart" not in pattern.intakes
    assert not [found for found in examine(run, cut=False).findings if found.severity.name == "STOP"]


@pytest.mark.parametrize("place", PLACES)
def test_every_edge_is_as_long_as_before_when_sewn(place: str) -> None:
    pattern = done(transfer(place))
    for word in ("shoulder", "armhole", "neck", "side_seam", "waist", "center_front"):
        name = f"{FRONT}/{word}"
        assert sewn_length(pattern, name) == pytest.approx(sewn_length(PLAIN, name), abs=0.1)


@pytest.mark.parametrize("place", PLACES)
def test_the_seams_beside_it_live_and_walk(place: str) -> None:
    pattern = done(transfer(place))
    assert set(pattern.seams) == set(PLAIN.seams)
    for seam in pattern.seams.values():
        assert walk_seam(pattern, seam).misfit == pytest.approx(
            walk_seam(PLAIN, PLAIN.seams[seam.name]).misfit, abs=0.1
        )
    assert len(list(walked_seams(pattern))) == len(list(walked_seams(PLAIN)))


@pytest.mark.parametrize("place", ["shoulder", "french", "neck"])
def test_the_edge_runs_on_where_the_dart_was_and_where_it_is(place: str) -> None:
    pattern = done(transfer(place))
    for word in ("side_seam", PLACES[place]["edge"].rsplit("/", 1)[-1]):
        path = closed_path(pattern, f"{FRONT}/{word}")
        assert path.corners(0.5) == ()


def test_notches_stay_where_they_are_sewn() -> None:
    pattern = done(transfer("armhole"))
    found = examine(styled(transfer("armhole")), cut=False).findings
    assert not [one.code for one in found if one.check in ("notch-places", "seam-notches", "names")]
    assert set(pattern.notches) == set(PLAIN.notches)


def test_the_point_ends_short_of_the_bust_point() -> None:
    usual = done(transfer("shoulder")).pieces[FRONT].points[f"{NEW}/point"]
    bust = PLAIN.pieces[FRONT].points[f"{FRONT}/bust_point"]
    assert usual.distance_to(bust) == pytest.approx(38.0, abs=1e-6)
    name, parameters = transfer("shoulder")
    asked: dict[str, Any] = {**parameters, "places": [{"at": PLACES["shoulder"], "short": "1 in"}]}
    own = done((name, asked)).pieces[FRONT].points[f"{NEW}/point"]
    assert own.distance_to(bust) == pytest.approx(25.4, abs=1e-6)


def test_shares_add_up_and_the_rest_stays() -> None:
    places = [{"at": PLACES["shoulder"], "share": 0.5}, {"at": PLACES["armhole"], "share": 0.25}]
    pattern = done(("transfer_dart", {"darts": [f"{FRONT}/bust_dart"], "places": places}))
    angles = {
        name: angle_about_bust(pattern, name)
        for name in (
            "transfer_dart.front/shoulder_dart",
            "transfer_dart.front/armhole_dart",
            f"{FRONT}/bust_dart",
        )
    }
    assert list(angles.values()) == pytest.approx([WHOLE / 2.0, WHOLE / 4.0, WHOLE / 4.0], abs=0.1)


def test_two_darts_are_put_together_in_one() -> None:
    both = ("bust_dart", "waist_dart")
    pattern = done(transfer("shoulder", *both))
    total = sum(angle_about_bust(PLAIN, f"{FRONT}/{dart}") for dart in both)
    assert angle_about_bust(pattern, NEW) == pytest.approx(total, abs=0.1)
    assert pattern.pieces[FRONT].intakes == (pattern.intakes[NEW],)


def test_a_dart_is_put_into_another() -> None:
    into = [{"intake": f"{FRONT}/waist_dart"}]
    pattern = done(("transfer_dart", {"darts": [f"{FRONT}/bust_dart"], "into": into}))
    total = WHOLE + angle_about_bust(PLAIN, f"{FRONT}/waist_dart")
    assert angle_about_bust(pattern, f"{FRONT}/waist_dart") == pytest.approx(total, abs=0.1)
    assert set(pattern.intakes) == set(PLAIN.intakes) - {f"{FRONT}/bust_dart"}


def test_moved_twice_is_as_moved_once() -> None:
    """By way of the armhole or straight: the same outline, by slash or by pivot."""
    step = ("transfer_dart", {"darts": [NEW], "places": [{"at": PLACES["shoulder"], "word": "last"}]})
    once, twice = done(transfer("shoulder")), done(transfer("armhole"), step)
    for word in ("neck", "center_front"):
        assert once.edges[f"{FRONT}/{word}"].path.start.distance_to(
            twice.edges[f"{FRONT}/{word}"].path.start
        ) == pytest.approx(0.0, abs=0.1)
    (found,) = (name for name in twice.intakes if name.endswith("/last"))
    assert angle_about_bust(twice, found) == pytest.approx(WHOLE, abs=0.1)
    ends = once.pieces[FRONT].points[f"{FRONT}/underarm"], twice.pieces[FRONT].points[f"{FRONT}/underarm"]
    assert ends[0].distance_to(ends[1]) < 0.2


def test_what_lies_between_the_two_places_is_turned_by_hand() -> None:
    """The same by complex numbers, without the engine: turned about the bust point by the angle."""
    bust, *corners = (
        {name: complex(place.x, place.y) for name, place in pattern.pieces[FRONT].points.items()}
        for pattern in (PLAIN, PLAIN, done(transfer("shoulder")))
    )
    center = bust[f"{FRONT}/bust_point"]
    first, second = (bust[f"{FRONT}/bust_dart/{word}_mouth"] - center for word in ("upper", "lower"))
    turn = second / first
    before, after = corners
    for word in ("shoulder_point", "underarm"):
        turned = center + (before[f"{FRONT}/{word}"] - center) * turn / abs(turn)
        assert abs(after[f"{FRONT}/{word}"] - turned) < 1e-6
    for word in ("side_neck_point", "neck_pit", "waist_center", "waist_side"):
        assert after[f"{FRONT}/{word}"] == before[f"{FRONT}/{word}"]


def test_the_shoulder_dart_of_the_back_goes_to_the_armhole() -> None:
    place = at("armhole", "underarm", piece=BACK, fraction=0.6)
    step = ("transfer_dart", {"darts": [f"{BACK}/shoulder_dart"], "places": [{"at": place}]})
    pattern = done(step)
    seam = PLAIN.seams["bodice/shoulder"]
    assert walk_seam(pattern, seam).misfit == pytest.approx(walk_seam(PLAIN, seam).misfit, abs=0.1)
    assert sewn_length(pattern, f"{BACK}/armhole") == pytest.approx(
        sewn_length(PLAIN, f"{BACK}/armhole"), abs=0.1
    )


def test_another_body_has_the_same_names() -> None:
    recipe = styled(transfer("shoulder"), values=FULL_BUST, front_darts=1).recipe
    names = set(styled(transfer("shoulder")).pattern.pieces[FRONT].names())
    other = replay(recipe, body(FULL_BUST, bust_girth=1000.0))
    assert other.suspended is None
    assert {name for name in other.pattern.pieces[FRONT].names() if "contour" not in name} >= {
        name for name in names if name.startswith("transfer_dart")
    }


def test_taking_the_step_out_stops_exactly_what_stands_on_it() -> None:
    from notchbook.recipe import add_step, remove_step

    base = body()
    recipe = bodice_recipe(base)
    recipe = add_step(recipe, *transfer("shoulder"), base=base)
    recipe = add_step(recipe, "shorten_dart", {"darts": [NEW], "amount": "1 cm"}, base=base)
    other = {"darts": [f"{BACK}/shoulder_dart"], "amount": "5 mm"}
    recipe = add_step(recipe, "shorten_dart", other, base=base)
    assert replay(recipe, base).suspended is None
    stopped = replay(remove_step(recipe, "transfer_dart-1"), base).suspended
    assert stopped is not None
    assert stopped.step == "shorten_dart-1"


@pytest.mark.parametrize(
    ("changes", "code"),
    [
        ({"places": []}, "dart-shares"),
        (
            {"places": [{"at": PLACES["shoulder"], "share": 0.7}, {"at": PLACES["neck"], "share": 0.7}]},
            "dart-shares",
        ),
        (
            {
                "places": [
                    {
                        "at": at(
                            "shoulder", "shoulder_point", piece=BACK, part="shoulder/side", distance="2 cm"
                        )
                    }
                ]
            },
            "dart-place-elsewhere",
        ),
        ({"places": [{"at": at("center_front", "neck_pit", fraction=0.5)}]}, "dart-on-fold"),
        ({"places": [{"at": at("shoulder", "side_neck_point", fraction=0.0)}]}, "dart-at-corner"),
        (
            {"places": [{"at": at("side_seam", "underarm", part="side_seam/above", distance="100 mm")}]},
            "dart-place-other-part",
        ),
        ({"pivot": f"{BACK}/shoulder_dart/point"}, "pivot-elsewhere"),
        ({"still": f"{BACK}/center_back"}, "still-edge-elsewhere"),
        ({"still": f"{FRONT}/shoulder"}, "still-edge-cut"),
        ({"still": f"{FRONT}/waist"}, "name-ambiguous"),
        ({"darts": [f"{FRONT}/bust_dart", f"{BACK}/shoulder_dart"]}, "darts-apart"),
        ({"darts": [f"{FRONT}/neck"]}, "name-lost"),
        ({"into": [{"intake": f"{FRONT}/bust_dart"}], "places": []}, "dart-into-itself"),
        ({"into": [{"intake": f"{BACK}/shoulder_dart"}], "places": []}, "darts-apart"),
        ({"places": [{"at": PLACES["shoulder"], "short": "400 mm"}]}, "dart-too-short"),
        (
            {
                "places": [
                    {"at": PLACES["shoulder"], "share": 0.5, "word": "x"},
                    {"at": PLACES["neck"], "share": 0.5, "word": "x"},
                ]
            },
            "dart-word-twice",
        ),
    ],
)
def test_what_is_refused_says_why(changes: dict[str, Any], code: str) -> None:
    name, parameters = transfer("shoulder")
    assert stopped_by((name, {**parameters, **changes})) == code


def test_a_dart_that_points_elsewhere_is_not_closed_about_the_bust_point() -> None:
    step = ("transfer_dart", {"darts": [f"{FRONT}/waist_dart_side"], "places": [{"at": PLACES["shoulder"]}]})
    run = styled(step, values=FULL_BUST)
    assert run.suspended is not None
    assert run.suspended.error.code == "dart-misses-pivot"


@pytest.mark.parametrize(("values", "large"), [(WOMAN, False), (FULL_BUST, True)])
def test_a_dart_that_points_at_the_bust_is_judged_by_its_angle(values: dict[str, float], large: bool) -> None:
    """Whatever it is called: at the shoulder a plain dart is wide, not too large; two of a full bust are."""
    name, parameters = transfer("shoulder", "bust_dart", "waist_dart")
    called = {**parameters, "places": [{"at": PLACES["shoulder"], "word": "shoulder_dart"}]}
    run = styled((name, called), values=values, front_darts=1)
    assert run.suspended is None
    codes = [one.code for one in examine(run, cut=False).findings if one.check == "dart-count"]
    assert ("dart-large" in codes) is large
