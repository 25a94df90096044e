"""Plausible bodies at random: the bodice in numbers closes, or says in words why not."""

from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from notchbook.blocks.upper import BodiceGiven, BodiceHalf, BustGiven, bust_line, draft_bodice
from notchbook.errors import DraftRefused
from support.upper_given import MAN, settled
from support.upper_judge import bends, bust, leg_difference, neck, waist


@st.composite
def women(draw: st.DrawFn) -> BodiceGiven:
    """Women as surveys foretell them from height, bust and waist, with the scatter of single bodies.

    The relations are those of 541 Spanish women (docs/survey, regressions), rounded.
    """

    def near(value: float, spread: float) -> float:
        return value + draw(st.floats(-1.5 * spread, 1.5 * spread))

    height = draw(st.floats(1450.0, 1900.0))
    girth = draw(st.floats(740.0, 1320.0))
    body_waist = girth - draw(st.floats(-30.0, 260.0))
    back = near(82.0 + 0.153 * height + 0.06 * body_waist, 12.0)
    front = back + near(38.0 + 0.1 * (girth - 920.0), 10.0)
    return settled(
        BodiceGiven(
            bust=girth + 60.0,
            waist=body_waist + 30.0,
            across_back=near(100.0 + 0.046 * height + 0.2 * girth, 10.0),
            across_chest=near(115.0 + 0.041 * height + 0.16 * girth, 10.0),
            neck=near(185.0 + 0.2 * girth, 10.0),
            shoulder=near(123.0, 8.0),
            shoulder_slope=near(20.3, 4.0),
            scye_depth=near(150.0 + 0.065 * girth, 10.0),
            back_length=back,
            bust_shape=BustGiven(
                front,
                front - near(0.235 * (185.0 + 0.2 * girth), 6.0),
                near(60.0 + 0.015 * height + 0.2 * girth, 10.0),
                near(30.0 + 0.17 * girth, 8.0),
            ),
        )
    )


def closes(body: BodiceGiven, half: BodiceHalf) -> None:
    assert abs(bust(half) - body.bust / 2.0) < 0.1
    assert abs(bust_line(half).width - body.bust / 2.0) < 1e-6
    assert abs(neck(half) - body.neck / 2.0) < 0.1
    if body.waist is not None:
        assert abs(waist(half) - body.waist / 2.0) < 0.1
    assert abs(half.front.side.length - half.back.side.length) < 1e-4
    assert all(leg_difference(dart) < 1e-6 for dart in (*half.front.waist_darts, *half.back.waist_darts))


@settings(max_examples=300, deadline=None)
@given(women())
def test_plausible_women_close(body: BodiceGiven) -> None:
    half = draft_bodice(body)
    closes(body, half)
    assert bends(half.front.neck) == bends(half.back.neck) == 0
    # Square to the shoulder at its tip, an armhole may turn back a little there, and nowhere else.
    assert max(bends(half.front.armhole), bends(half.back.armhole)) <= 1


@settings(max_examples=100, deadline=None)
@given(
    st.floats(560.0, 1500.0),
    st.floats(0.36, 0.42),
    st.floats(0.34, 0.40),
    st.floats(8.0, 32.0),
    st.one_of(st.none(), st.floats(0.7, 1.2)),
)
def test_bodies_without_bust_shaping_close(
    girth: float, back: float, chest: float, slope: float, waist_share: float | None
) -> None:
    body = replace(
        MAN,
        bust=girth,
        across_back=back * girth,
        across_chest=chest * girth,
        neck=0.38 * girth,
        shoulder=0.135 * girth,
        shoulder_slope=slope,
        scye_depth=0.24 * girth,
        back_length=0.43 * girth,
        waist=None if waist_share is None else waist_share * girth,
    )
    closes(body, draft_bodice(body))


@settings(max_examples=300, deadline=None)
@given(
    st.lists(st.floats(0.4, 1.7), min_size=12, max_size=12),
    st.floats(-20.0, 60.0),
    st.integers(0, 2),
    st.integers(0, 2),
)
def test_implausible_bodies_close_or_are_refused_in_words(
    factors: list[float], slope: float, front_darts: int, back_darts: int
) -> None:
    sizes = (980.0, 790.0, 370.0, 340.0, 370.0, 123.0, 210.0, 400.0, 438.0, 350.0, 265.0, 190.0)
    given_sizes = [size * factor for size, factor in zip(sizes, factors, strict=True)]
    bust_girth, waist_girth, back, chest, neck_base, shoulder, scye, length = given_sizes[:8]
    body = BodiceGiven(
        bust_girth,
        waist_girth,
        back,
        chest,
        neck_base,
        shoulder,
        slope,
        scye,
        length,
        BustGiven(*given_sizes[8:]),
        front_darts=front_darts,
        back_darts=back_darts,
    )
    try:
        half = draft_bodice(body)
    except DraftRefused as refused:
        assert refused.code.startswith("bodice-")
        assert "{" not in refused.text()
        return
    closes(body, half)
