"""`notchbook sewing-order`: in which order a style is sewn."""

from notchbook.cli.answer import answer
from notchbook.cli.options import AsJson, OtherMeasures, StyleName, UnitChoice
from notchbook.cli.screen import Screen


def sewing_order(
    style: StyleName,
    measures: OtherMeasures = None,
    unit: UnitChoice = "cm",
    as_json: AsJson = False,
) -> None:
    """Say in which order a style is sewn: what must come before what, then the usual order of the workroom.

    Example: notchbook sewing-order skirt.json
    """
    from notchbook.app.sewing_words import line_text
    from notchbook.app.style_file import read_style, run_style
    from notchbook.body import read_measures
    from notchbook.finish.sewing import sewing_order as ordered
    from notchbook.pattern import spoken
    from notchbook.units import LengthStyle

    body = None if measures is None else read_measures(measures)
    run = run_style(read_style(style), body)
    order = ordered(run.pattern)
    lengths = LengthStyle(unit)
    gaps = [
        f"Nothing joins {spoken(gap.ends_at)} to {spoken(gap.goes_on_at)} before {spoken(gap.seam)} is sewn."
        for gap in order.gaps
    ]

    def show(screen: Screen) -> None:
        screen.line(f"{run.recipe.name} for {run.measures.name}")
        screen.line()
        for line in order.lines:
            screen.line(f"{line.number:>3}  {line_text(line, lengths)}")
        for words in gaps:
            screen.line(words)
        if order.waiting:
            names = ", ".join(spoken(key) for key in order.waiting)
            screen.line(f"Each of these waits for another, so that none can be sewn first: {names}.")

    data = {
        "style": run.recipe.name,
        "body": run.measures.name,
        "lines": [
            {
                "number": line.number,
                "text": line.text,
                "stage": line.stage,
                "at": list(line.at),
                "amount": round(line.amount, 3),
                "how": line.how,
            }
            for line in order.lines
        ],
        "gaps": [{"seam": gap.seam, "from": gap.ends_at, "to": gap.goes_on_at} for gap in order.gaps],
        "waiting": list(order.waiting),
    }
    answer(data, show, as_json=as_json, to_check=bool(order.gaps or order.waiting))
