"""`notchbook explain`: which steps and which measures made an edge as it is."""

from typing import TYPE_CHECKING, Annotated, Any

import typer

from notchbook.cli.answer import answer
from notchbook.cli.options import AsJson, OtherMeasures, StyleName, UnitChoice
from notchbook.cli.screen import Screen

if TYPE_CHECKING:
    from notchbook.app.why.explaining_names import Doing
    from notchbook.app.why.what_moves import Mover


def explain(
    style: StyleName,
    name: Annotated[
        str,
        typer.Argument(
            metavar="NAME",
            help="An edge, point, dart, seam, notch or piece, such as skirt.front/hem; one word where it "
            "fits one thing.",
        ),
    ],
    measures: OtherMeasures = None,
    unit: UnitChoice = "cm",
    as_json: AsJson = False,
) -> None:
    """Say why an edge is as it is: its steps, its measures, and what moves it.

    Example: notchbook explain skirt.json skirt.front/side_seam
    """
    from notchbook.app.style_file import read_style, run_style
    from notchbook.app.why.explaining_names import why_so
    from notchbook.app.why.what_moves import movers
    from notchbook.body import read_measures
    from notchbook.cli.show_why_so import show_why_so

    body = None if measures is None else read_measures(measures)
    run = run_style(read_style(style), body)
    why = why_so(run, name)
    moving = movers(run, why)
    data = {
        "name": why.name,
        "kind": why.kind,
        "lines": list(why.lines),
        "steps": [_doing_data(doing) for doing in why.doings],
        "moved_by": [_mover_data(one) for one in moving],
    }

    def show(screen: Screen) -> None:
        show_why_so(screen, run, why, moving, unit)

    answer(data, show, as_json=as_json)


def _doing_data(doing: "Doing") -> dict[str, Any]:
    return {
        "step": doing.record.id,
        "did": doing.deed,
        "names": list(doing.names),
        "came_from": list(doing.came_from),
        "moved": None if doing.moved is None else round(doing.moved, 6),
        "parameters": doing.record.parameters,
        "measures": [
            {
                "key": read.key,
                "value": None if read.measure is None else read.measure.value,
                "status": None if read.measure is None else read.measure.status,
            }
            for read in doing.reads
        ],
    }


def _mover_data(one: "Mover") -> dict[str, Any]:
    kind = "measure" if one.is_measure else "number"
    return {"what": one.word, "kind": kind, "more": one.more, "moves": round(one.moved, 6)}
