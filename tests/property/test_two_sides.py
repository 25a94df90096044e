"""Any few measures of the left by a believable amount: both sides close by other code, or a refusal."""

from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

from notchbook.errors import InputError, StepRefused, catalogue
from notchbook.pattern import pattern_to_data
from support.two_sided import BLOCKS, LEFT, broken_outlines, misses, replayed


@st.composite
def sided_bodies(draw: st.DrawFn) -> tuple[str, dict[str, float]]:
    """A block, and by how much the left of its body differs, in a few of the measures that it reads, mm."""
    name = draw(st.sampled_from(sorted(BLOCKS)))
    keys = draw(st.lists(st.sampled_from(BLOCKS[name].reads), min_size=1, max_size=4, unique=True))
    return name, {key: LEFT[key] * draw(st.floats(-1.2, 1.2)) for key in keys}


@example(("bodice", {"waist_girth": 0.625}))  # each part within a pencil line, the waist not
@example(("bodysuit with sleeve", {"waist_girth": 2.5}))
@example(("circle skirt", {"waist_girth": 0.002}))  # alike: one piece serves both sides
@given(sided_bodies())
@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_both_sides_close_or_the_body_is_refused_in_words(body: tuple[str, dict[str, float]]) -> None:
    name, by = body
    measures = BLOCKS[name].body()
    for key, more in by.items():
        measures = measures.with_value(key, measures.value(key) + more, "left")
    done = replayed(name, measures)
    if done.suspended is not None:
        error = done.suspended.error
        assert isinstance(error, (InputError, StepRefused))
        assert error.code in catalogue()
        assert error.text()
        return
    data = pattern_to_data(done.pattern)
    assert broken_outlines(data) == []
    assert misses(name, done, data) == {"right": [], "left": []}
