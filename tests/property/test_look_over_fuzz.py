"""Whatever finite values a set holds, looking it over gives doubts and never anything else."""

import math
from dataclasses import replace

from hypothesis import example, given, settings
from hypothesis import strategies as st

from notchbook.body import (
    WAIST_LEVELS,
    Measure,
    MeasureSet,
    WaistLevel,
    look_over,
    measure_entry,
    measure_table,
)
from notchbook.units import LengthStyle, Unit

TABLE = measure_table()
UNITS: list[Unit] = ["mm", "cm", "in"]
ANY_VALUE = st.one_of(
    st.floats(0, 1e5, allow_nan=False), st.sampled_from([0.0, 5e-324, 1e-9, 0.1, 1e5, 254.0])
)


@st.composite
def any_sets(draw: st.DrawFn) -> MeasureSet:
    """Sets of any finite values, plain and by side, of any population and waist."""
    values: dict[str, Measure] = {}
    for key in draw(st.lists(st.sampled_from(sorted(TABLE)), unique=True, max_size=14)):
        low, high = TABLE[key].usual
        value = draw(st.one_of(ANY_VALUE, st.floats(low, high)))
        sides = ["", "@left", "@right"] if TABLE[key].sided else [""]
        for side in draw(st.lists(st.sampled_from(sides), unique=True, min_size=1)):
            values[key + side] = Measure(value, draw(st.sampled_from(["measured", "chart"])))
    level: WaistLevel = draw(st.sampled_from(WAIST_LEVELS))
    drop = draw(st.sampled_from([12.5, 40.0])) if level == "lower" else 0.0
    return MeasureSet(
        "Any",
        values,
        waist_level=level,
        waist_drop=drop,
        population=draw(st.sampled_from([None, "women", "men"])),
        taken_as=draw(st.sampled_from(["book", "survey"])),
    )


@settings(max_examples=150)
@given(any_sets(), st.sampled_from(UNITS))
@example(replace(MeasureSet.from_mm("A", dict.fromkeys(TABLE, 0.0)), population="women"), "in")
@example(replace(MeasureSet.from_mm("A", dict.fromkeys(TABLE, 1e5)), population="men"), "cm")
def test_any_finite_values_give_doubts_with_words_and_never_an_exception(
    measures: MeasureSet, unit: Unit
) -> None:
    style = LengthStyle(unit)
    before = dict(measures.values)
    looked = look_over(measures, style)
    assert dict(measures.values) == before
    assert (looked.level == "fine") == (not looked.doubts)
    for doubt in looked.doubts:
        assert doubt.problem.text(style.text) and doubt.problem.next_step(style.text)
        assert "{" not in doubt.problem.text() + doubt.problem.next_step()
        assert set(doubt.keys) <= {
            key for name in measures.values for key in (name, name.partition("@")[0])
        } | {f"{name}@{side}" for name in measures.values for side in ("left", "right")}
        for repair in doubt.repairs:
            assert all(math.isfinite(value) and value > 0 for _, value in repair.values)
            assert 0 < repair.share <= 1 + 1e-9
        for suspect in doubt.suspects:
            assert math.isfinite(suspect.z) and 0 <= suspect.low <= suspect.high
    for one in looked.unseen:
        assert one.slip is None or one.slip > 0
        assert measure_entry(one.key.partition("@")[0]).is_length
