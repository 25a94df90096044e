"""Whatever is asked of trousers within reason: every length closes, no outline crosses itself."""

from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import Polygon

from notchbook.checks import Subject
from notchbook.checks.closures import closures
from notchbook.checks.measured import dense
from support.trouser_bodies import lower_body, trousers_run

ASKED = st.fixed_dictionaries(
    {
        "silhouette": st.sampled_from(["fitted", "straight", "wide", "shorts", "culottes"]),
        "waist_drop": st.sampled_from(["0 mm", "25 mm", "60 mm", "100 mm"]),
        "inseam_stretch": st.floats(0.0, 10.0),
        "hip_ease": st.integers(20, 120).map(lambda mm: f"{mm} mm"),
        "crotch_ease": st.integers(10, 60).map(lambda mm: f"{mm} mm"),
        "front_shape": st.sampled_from(["auto", "flat", "darts"]),
    }
)


@given(asked=ASKED, hip=st.floats(880.0, 1150.0), rise=st.floats(250.0, 295.0))
@settings(max_examples=12, deadline=None)
def test_trousers_close(asked: dict[str, object], hip: float, rise: float) -> None:
    crotch = 715.0 + 0.3 * (hip - 960.0) + 1.1 * (rise - 270.0)
    body = lower_body(
        hip_girth=hip,
        waist_girth=hip - 240.0,
        standing_rise=rise,
        thigh_girth=0.6 * hip,
        crotch_length=crotch,
    )
    run = trousers_run(body, **asked)
    assert run.suspended is None, str(run.suspended)
    found = closures(Subject(run.pattern, None, run.expectations))
    lengths = [one for one in found if one.kind == "length"]
    assert [one.name for one in lengths if abs(one.measured - one.wanted) > one.within] == []
    for piece in run.pattern.pieces.values():
        assert Polygon(dense(piece.sew_line).points).is_valid
