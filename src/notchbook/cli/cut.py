"""`notchbook cut`: the pieces of a style, cut-ready."""

from notchbook.cli.answer import answer
from notchbook.cli.options import AsJson, DespiteFindings, HouseFile, OtherMeasures, StyleName, UnitChoice
from notchbook.cli.screen import Screen


def cut(
    style: StyleName,
    measures: OtherMeasures = None,
    unit: UnitChoice = "cm",
    house: HouseFile = None,
    despite_findings: DespiteFindings = False,
    as_json: AsJson = False,
) -> None:
    """Show the cut-ready pieces: how many, with what allowance.

    Example: notchbook cut skirt.json --unit in
    """
    from dataclasses import replace

    from notchbook.app.bodies.resting_on_estimates import rested_on
    from notchbook.app.papers import cut_ready, job_of
    from notchbook.app.style_file import drift_of, read_style, run_style
    from notchbook.body import read_measures
    from notchbook.cli import show_pattern
    from notchbook.cli.house import read_house
    from notchbook.cli.show_estimates import estimate_data, show_estimates
    from notchbook.finish import elastic_cuts
    from notchbook.units import LengthStyle

    body = None if measures is None else read_measures(measures)
    stored = read_style(style)
    run = run_style(stored, body)
    job = job_of(
        run,
        "",
        read_house(house),
        lengths=LengthStyle(unit),
        despite_findings=despite_findings,
    )
    ready = cut_ready(replace(job, drift=drift_of(stored, run)))
    panels = sum(piece.panels for piece in ready.pieces)
    estimates = rested_on(run)
    step = show_pattern.command(
        "print", style, "--out pattern.pdf --card card.pdf", measures=measures, unit=unit
    )

    def show(screen: Screen) -> None:
        screen.line(f"{run.recipe.name} for {run.measures.name}")
        screen.line()
        show_estimates(screen, estimates, run.measures.population, unit)
        show_pattern.show_cut_pieces(screen, ready.pieces, unit)
        screen.line(f"{len(ready.pieces)} pieces, {panels} panels.")
        for trim in job.info.trims:
            screen.line(f"{trim.words}.")
        show_pattern.show_report(screen, ready.report, unit)
        screen.next_steps((step,))

    data = {
        "style": run.recipe.name,
        "body": run.measures.name,
        "pieces": show_pattern.piece_data(ready),
        "panels": panels,
        "elastics": show_pattern.elastic_data(elastic_cuts(run.pattern, job.house)),
        "estimates": estimate_data(estimates),
        "report": ready.report.to_data(),
        "next_step": step,
    }
    answer(data, show, as_json=as_json, to_check=show_pattern.to_check(ready.report))
