"""The papers of a style: pattern to print, cutter's must, drawing, picture, findings, style file.

Here is the gate: what would spoil cloth is not printed, unless she says so.
"""

from dataclasses import dataclass, replace
from pathlib import Path

from notchbook.app.bodies.resting_on_estimates import rested_on
from notchbook.app.bought_lengths import bought_lengths
from notchbook.app.examining import examine, examine_subject, subject_of
from notchbook.app.finding_words import message_in
from notchbook.app.leather_words import leather_notes
from notchbook.app.paper_draft import drafted_from, materials_of, titled_by_block, trims_of
from notchbook.app.paper_trims import bought_trims
from notchbook.app.sewing_words import sewing_lines
from notchbook.app.staging import refuse_other_ending, refuse_same_file, refuse_without_ending, staged
from notchbook.app.stitching import stitches, stretch_notes
from notchbook.app.style_file import write_style
from notchbook.app.thread import thread
from notchbook.body.quantity_words import said_key
from notchbook.checks import Report
from notchbook.errors import OutputError
from notchbook.finish import Cloth, CutPiece, HouseTable, elastic_cuts, production_table
from notchbook.output.paper_info import PaperEstimate, PaperInfo
from notchbook.output.registry import output, output_sources
from notchbook.output.tiling import Paper
from notchbook.pattern import Finding, Severity
from notchbook.recipe import Replay, canonical_json
from notchbook.units import LengthStyle


@dataclass(frozen=True, slots=True)
class Job:
    """What papers are made of: a run of a recipe, the house table, the cloth, the head of the papers.

    ``despite_findings`` opens the gate: papers are made although something would spoil cloth. ``drift`` is
    what would come out otherwise now than when the style was stored.
    """

    replay: Replay
    info: PaperInfo
    house: HouseTable
    cloth: Cloth
    despite_findings: bool = False
    drift: tuple[Finding, ...] = ()


@dataclass(frozen=True, slots=True)
class CutReady:
    """Cut pieces with the report that let them pass the gate."""

    pieces: tuple[CutPiece, ...]
    report: Report


def job_of(
    replay: Replay,
    date: str,
    house: HouseTable | None = None,
    cloth: Cloth | None = None,
    *,
    revision: str = "",
    lengths: LengthStyle | None = None,
    despite_findings: bool = False,
) -> Job:
    """The job of a style as it stands; ``date`` and ``revision`` are written on the papers as given,
    lengths as ``lengths`` writes them (None: centimeters)."""
    recipe = replay.recipe
    elastics = elastic_cuts(replay.pattern, house or production_table())
    info = PaperInfo(
        style_number=recipe.number,
        title=recipe.name,
        revision=revision,
        date=date,
        size=replay.measures.name,
        materials=materials_of(replay),
        notes=(*leather_notes(replay.pattern, lengths or LengthStyle()), *stretch_notes(replay.pattern)),
        trims=(
            *trims_of(elastics, lengths or LengthStyle()),
            *bought_lengths(replay.pattern, elastics, lengths or LengthStyle()),
            *bought_trims(replay, lengths or LengthStyle(), house),
            *thread(replay.pattern, lengths or LengthStyle()),
        ),
        lengths=lengths or LengthStyle(),
        estimates=_paper_estimates(replay, lengths or LengthStyle()),
        drafted_from=drafted_from(replay, lengths or LengthStyle()),
        stitches=stitches(replay.pattern, lengths or LengthStyle()),
        sewing=sewing_lines(replay.pattern, lengths or LengthStyle()),
    )
    return Job(replay, info, house or production_table(), cloth or Cloth(), despite_findings)


def _paper_estimates(replay: Replay, style: LengthStyle) -> tuple[PaperEstimate, ...]:
    people = replay.measures.population
    return tuple(
        PaperEstimate(said_key(name, people), one.words(name, style, people))
        for name, one in rested_on(replay).items()
    )


def cut_ready(job: Job) -> CutReady:
    """Make the pieces cut-ready. OutputError ``papers-refused`` names what would spoil cloth."""
    subject = subject_of(job.replay, job.house, job.cloth)
    report = examine_subject(subject, job.replay)
    report = replace(report, findings=(*job.drift, *report.findings))
    if report.stops and not job.despite_findings:
        stops = (message_in(f, job.info.lengths) for f in report.findings if f.severity is Severity.STOP)
        first = next(stops, "a check broke")
        count = sum(f.severity.value == "stop" for f in report.findings) + len(report.broken)
        raise OutputError("papers-refused", style=job.replay.recipe.name, count=count, first=first)
    return CutReady(titled_by_block(subject.cut_pieces, job.replay.recipe), report)


def write_draft(job: Job, path: Path, paper: Paper = "both") -> Report:
    """Write one file by its ending: style file, drawing, printable pattern or picture.

    A style file keeps the work and passes no gate; the others do. InputError ``suffix-unknown`` for
    another ending, ``suffix-missing`` for none, OutputError ``output-is-folder`` for a folder; nothing is
    written then.
    """
    refuse_without_ending(path, (".json", *output_sources()))
    suffix = path.suffix.lower()
    if suffix == ".json":
        write_style(job.replay, path)
        return examine(job.replay, job.house)
    kind = output(suffix)
    ready = cut_ready(job)
    kind.write(ready.pieces, job.info, path, paper)
    return ready.report


def write_papers(job: Job, folder: Path, paper: Paper = "both") -> dict[str, Path]:
    """Write the whole set into a folder: pattern, card, style, findings, preview; returns their paths."""
    ready = cut_ready(job)
    made = _made_folders(folder)
    files = {
        "pattern": folder / "pattern.pdf",
        "card": folder / "card.pdf",
        "style": folder / "style.json",
        "findings": folder / "findings.json",
        "preview": folder / "preview.png",
    }
    try:
        with staged(files) as places:
            output(".pdf").write(ready.pieces, job.info, places["pattern"], paper)
            _write_card(job, ready, places["card"], paper)
            write_style(job.replay, places["style"])
            write_findings(ready.report, places["findings"])
            output(".png").write(ready.pieces, job.info, places["preview"], paper)
    except BaseException:
        for new in made:
            new.rmdir()
        raise
    return files


def write_pattern(job: Job, pattern: Path, card: Path | None, paper: Paper = "both") -> CutReady:
    """Write the tiled pattern and, where asked, the cutter's must; both from the same cut pieces.

    Refused before anything is written: one file for both (``outputs-same-file``), and as
    :func:`~notchbook.app.staging.refuse_other_ending`.
    """
    targets = {"pattern": pattern} if card is None else {"pattern": pattern, "card": card}
    refuse_same_file(targets.values())
    for path in targets.values():
        refuse_other_ending(path, ".pdf")
    ready = cut_ready(job)
    with staged(targets) as places:
        output(".pdf").write(ready.pieces, job.info, places["pattern"], paper)
        if card is not None:
            _write_card(job, ready, places["card"], paper)
    return ready


def write_findings(report: Report, path: Path) -> None:
    """Write the report of the checks as JSON."""
    from notchbook.output.files import write_file

    write_file(path, canonical_json(report.to_data()).encode("utf-8"))


def _write_card(job: Job, ready: CutReady, path: Path, paper: Paper) -> None:
    from notchbook.output.card_pdf import write_card_pdf
    from notchbook.output.flat import garment_flat

    flat = garment_flat(job.replay.pattern)
    write_card_pdf(ready.pieces, job.info, path, "letter" if paper == "letter" else "a4", flat)


def _made_folders(folder: Path) -> list[Path]:
    """Make the folder with those above it; the new ones, the innermost first."""
    new = [place for place in (folder, *folder.parents) if not place.exists()]
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        detail = error.strerror or type(error).__name__
        raise OutputError("output-folder", path=str(folder), detail=detail) from error
    return new
