"""What cannot be drafted is refused in words that name the measures, never by a traceback."""

from dataclasses import replace

import pytest

from notchbook.blocks.upper import BodiceGiven, draft_bodice
from notchbook.errors import DraftRefused
from support.upper_given import MAN, WOMAN, shaped

REFUSED = {
    "bodice-no-arm-room": replace(WOMAN, across_back=480.0, across_chest=450.0, shoulder=165.0),
    "bodice-arm-room-wide": replace(WOMAN, bust=1900.0, waist=1700.0),
    "bodice-neck-unreachable": replace(MAN, neck=5.0),
    "bodice-neck-depth": shaped(center_front=250.0),
    "bodice-bust-point-far": shaped(way=20.0),
    "bodice-bust-point-low": replace(shaped(way=430.0), front_darts=0),
    "bodice-bust-point-wide": replace(shaped(), waist=300.0, front_darts=0, back_darts=0),
    "bodice-front-too-long": shaped(front_length=520.0, center_front=430.0),
    "bodice-shoulder-against-width": replace(WOMAN, shoulder=20.0),
    "bodice-shoulder-below-underarm": replace(WOMAN, scye_depth=80.0),
    "bodice-side-too-short": replace(MAN, scye_depth=420.0),
    "bodice-armhole-corner": replace(
        WOMAN, bust=1000.0, across_back=520.0, across_chest=360.0, shoulder=145.0
    ),
    "bodice-waist-dart-short": replace(shaped(way=390.0), waist=860.0),
    "bodice-waist-darts-too-wide": replace(WOMAN, waist=240.0, front_darts=1, back_darts=1),
    "bodice-underarm-low": replace(shaped(way=200.0), scye_depth=250.0),
}


@pytest.mark.parametrize("code", REFUSED)
def test_refused_with_its_code(code: str) -> None:
    with pytest.raises(DraftRefused) as caught:
        draft_bodice(REFUSED[code])
    assert caught.value.code == code
    assert "{" not in caught.value.text()
    assert caught.value.next_step()


@pytest.mark.parametrize("measure", ["across_back", "across_chest"])
def test_the_width_against_the_shoulder_is_named(measure: str) -> None:
    body = replace(WOMAN, bust=1300.0, waist=1100.0)
    wide = replace(body, across_back=520.0) if measure == "across_back" else replace(body, across_chest=520.0)
    with pytest.raises(DraftRefused) as caught:
        draft_bodice(wide)
    assert caught.value.facts["measure"] == measure.replace("_", " ")


@pytest.mark.parametrize(
    "odd",
    [
        replace(WOMAN, waist=1.0),
        replace(WOMAN, neck=1.0),
        replace(WOMAN, bust=10.0),
        replace(WOMAN, shoulder_slope=-60.0),
        replace(WOMAN, scye_depth=1.0),
        replace(MAN, across_back=1.0),
        replace(MAN, front_length=1.0),
    ],
)
def test_nonsense_is_refused_too(odd: BodiceGiven) -> None:
    with pytest.raises(DraftRefused):
        draft_bodice(odd)
