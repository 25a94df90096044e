"""`notchbook demo`: an invented form, from measures to paper."""

from pathlib import Path
from typing import Annotated

import typer

from notchbook.cli.answer import answer
from notchbook.cli.options import AsJson, DateText, PaperChoice
from notchbook.cli.screen import Screen


def demo(
    folder: Annotated[
        Path, typer.Option("--out", "-o", metavar="FOLDER", help="Folder for the papers; made if needed.")
    ] = Path("out/demo"),
    paper: PaperChoice = "both",
    date: DateText = "",
    as_json: AsJson = False,
) -> None:
    """Make a skirt for an invented form, measures to paper.

    Writes pattern.pdf to print, card.pdf (the cutter's must), style.json, findings.json and preview.png.

    Example: notchbook demo --paper letter
    """
    from notchbook.app.demo import demo_form, demo_recipe
    from notchbook.app.drafting import completed
    from notchbook.app.eases.ease_rows import ease_table
    from notchbook.app.papers import cut_ready, job_of, write_papers
    from notchbook.cli import show_pattern
    from notchbook.cli.dates import paper_date
    from notchbook.recipe import replay

    form = demo_form()
    run = completed(replay(demo_recipe(form), form))
    job = job_of(run, paper_date(date))
    ready = cut_ready(job)
    files = write_papers(job, folder, paper)
    eases = ease_table(run)
    steps = (
        f"look at {files['preview']}, then print {files['pattern']} at 100 % and measure the test square",
        f"notchbook check {show_pattern.typed(files['style'])}",
        "notchbook open",
    )

    def show(screen: Screen) -> None:
        screen.line(f"{job.info.heading} for {form.name}: an invented form, not a real person.")
        screen.line()
        show_pattern.show_eases(screen, eases, "cm")
        show_pattern.show_cut_pieces(screen, ready.pieces, "cm")
        show_pattern.show_report(screen, ready.report, "cm")
        show_pattern.show_files(screen, files)
        screen.next_steps(steps)

    data = {
        "style": job.info.heading,
        "eases": show_pattern.ease_data(eases),
        "pieces": show_pattern.piece_data(ready),
        "report": ready.report.to_data(),
        "files": show_pattern.file_data(files),
        "next_step": steps[0],
    }
    answer(data, show, as_json=as_json, to_check=show_pattern.to_check(ready.report))
