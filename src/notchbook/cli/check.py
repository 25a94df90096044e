"""`notchbook check`: what the checks say of a style."""

from notchbook.cli.answer import answer
from notchbook.cli.options import AsJson, OtherMeasures, StyleName, UnitChoice
from notchbook.cli.screen import Screen


def check(
    style: StyleName, measures: OtherMeasures = None, unit: UnitChoice = "cm", as_json: AsJson = False
) -> None:
    """Check a style: seams, notches, darts, grain, hems.

    Ends with 0 when all is fine and with 1 when something is to be looked at.

    Example: notchbook check skirt.json

    Example: notchbook check skirt.json --measures marta.csv
    """
    from notchbook.app.examining import ease_table
    from notchbook.app.resting_on_estimates import rested_on
    from notchbook.app.style_file import examine_style, read_style, run_style
    from notchbook.body import read_measures
    from notchbook.cli import show_pattern
    from notchbook.cli.show_estimates import estimate_data, show_estimates
    from notchbook.finish import production_table

    body = None if measures is None else read_measures(measures)
    stored = read_style(style)
    run = run_style(stored, body)
    report = examine_style(stored, run, production_table())
    girths, estimates = ease_table(run), rested_on(run)
    looking = show_pattern.to_check(report)
    first = report.findings[0].code if report.findings else ""
    again = (
        f"notchbook why {first}"
        if looking and first
        else show_pattern.command("print", style, "--out pattern.pdf", measures=measures, unit=unit)
    )

    def show(screen: Screen) -> None:
        screen.line(f"{run.recipe.name} for {run.measures.name}")
        screen.line()
        show_estimates(screen, estimates, run.measures.population, unit)
        show_pattern.show_girths(screen, girths, unit)
        show_pattern.show_report(screen, report, unit)
        screen.next_steps((again,))

    data = {
        "style": run.recipe.name,
        "body": run.measures.name,
        "girths": show_pattern.girth_data(girths),
        "estimates": estimate_data(estimates),
        "report": report.to_data(),
        "next_step": again,
    }
    answer(data, show, as_json=as_json, to_check=looking)
