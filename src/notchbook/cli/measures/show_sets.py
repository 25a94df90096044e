"""Two sets of measures side by side, on the screen and as data."""

from collections.abc import Iterable, Sequence
from typing import Any

from notchbook.body import Doubt, MeasureSet, measure_entry, plain_key
from notchbook.body.charts import MeasureDifference, SetComparison, SizeChart, compare_sets
from notchbook.body.quantity_words import quantity_text, said_key
from notchbook.cli.answer import answer
from notchbook.cli.screen import Screen
from notchbook.units import LengthStyle, Unit


def answer_sets(
    first: MeasureSet, second: MeasureSet, chart: SizeChart | None, unit: Unit, *, as_json: bool
) -> None:
    """Two sets value by value."""
    compared = compare_sets(first, second, chart)
    style = LengthStyle(unit)

    def show(screen: Screen) -> None:
        screen.line(f"{first.name} and {second.name}")
        screen.line()
        show_differences(screen, compared, style)
        show_absent(screen, first.name, compared.only_second)
        show_absent(screen, second.name, compared.only_first)
        show_remarks(screen, compared.remarks, style)

    answer(set_data(compared), show, as_json=as_json, to_check=bool(compared.remarks))


def show_differences(screen: Screen, compared: SetComparison, style: LengthStyle) -> None:
    """A table of both values, their difference and whether it is more than a tape's."""
    with_steps = any(row.steps is not None for row in compared.rows)
    columns = [
        "measure",
        compared.first,
        compared.second,
        "difference",
        *(["sizes"] if with_steps else []),
        "",
    ]
    rows = [_difference_cells(row, style, with_steps=with_steps) for row in compared.rows]
    if rows:
        screen.table(columns, rows, numbers=columns[1:-1])
        screen.line()


def show_absent(screen: Screen, name: str, keys: Sequence[str]) -> None:
    """What one of the two has and the other not; a measure that lacks on both sides is said once."""
    plain = [plain_key(one) for one in keys]
    said = dict.fromkeys(
        said_key(key if plain.count(key) > 1 else one) for key, one in zip(plain, keys, strict=True)
    )
    if said:
        screen.line(f"{name} has no {', '.join(said)}.")


def show_remarks(screen: Screen, remarks: Iterable[Doubt], style: LengthStyle) -> None:
    """What makes an answer weaker, each with what to do."""
    for remark in remarks:
        screen.line(f"look {remark.problem.text(style.text)}  [{remark.code}]")
        screen.line(f"     {remark.problem.next_step(style.text)}")


def signed(key: str, difference: float, style: LengthStyle) -> str:
    """A difference with its sign: ``+1.5 cm``; ``0.0 cm`` without."""
    text = quantity_text(measure_entry(plain_key(key)), difference, style)
    return f"+{text}" if difference > 0 and text.strip('0." cmk°g') else text


def set_data(compared: SetComparison) -> dict[str, Any]:
    """A comparison of two sets as data, mm."""
    return {
        "kind": "sets",
        "first": compared.first,
        "second": compared.second,
        "measures": [
            {
                "key": row.key,
                "first": row.first.value,
                "second": round(row.second.value, 6),
                "difference": round(row.difference, 6),
                "tolerance": row.tolerance,
                "beyond_tolerance": row.beyond,
                "steps": None if row.steps is None else round(row.steps, 3),
                "moved_to_other_waist": row.moved,
            }
            for row in compared.rows
        ],
        "only_first": list(compared.only_first),
        "only_second": list(compared.only_second),
        "remarks": remark_data(compared.remarks),
    }


def remark_data(remarks: Iterable[Doubt]) -> list[dict[str, str]]:
    """Remarks as data."""
    return [{"code": remark.code, "message": remark.problem.text()} for remark in remarks]


def _difference_cells(row: MeasureDifference, style: LengthStyle, *, with_steps: bool) -> Sequence[str]:
    entry = measure_entry(plain_key(row.key))
    remark = "" if row.beyond else "the same within the tape"
    if row.moved:
        remark = f"{remark}; moved to the other waist".lstrip("; ")
    return (
        said_key(row.key),
        quantity_text(entry, row.first.value, style),
        quantity_text(entry, row.second.value, style),
        signed(row.key, row.difference, style),
        *([("" if row.steps is None else f"{row.steps:+.1f}")] if with_steps else []),
        remark,
    )
