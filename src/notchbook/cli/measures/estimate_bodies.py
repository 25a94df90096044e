"""`notchbook measures estimate` for a file of many bodies."""

from pathlib import Path

from notchbook.cli.answer import answer
from notchbook.cli.options import PopulationWord
from notchbook.cli.progress import progress_of_bodies
from notchbook.cli.screen import Screen
from notchbook.errors import InputError
from notchbook.units import Unit


def estimate_bodies(
    file: Path,
    garment: str,
    written: tuple[Path | None, Path | None],
    population: PopulationWord | None,
    unit: Unit | None,
    *,
    as_json: bool,
) -> None:
    """Write the filled bodies and the report (``written``: either may be left out, not both)."""
    from notchbook.app.bodies.estimating_bodies import estimate_file
    from notchbook.app.needs.of_garment import garment_named

    out, report = written
    if out is None and report is None:
        raise InputError("estimate-report-missing", file=file.name)
    made_for = garment_named(garment) if garment else None
    with progress_of_bodies() as progress:
        done = estimate_file(file, out, report, population, made_for, unit=unit, progress=progress)
    refused = sum(one.error is not None for one in done)
    files = {name: str(path) for name, path in (("measures", out), ("report", report)) if path is not None}

    def show(screen: Screen) -> None:
        screen.line(f"{len(done)} bodies: {len(done) - refused} estimated, {refused} refused")
        for path in files.values():
            screen.line(f"written: {path}")

    data = {"bodies": len(done), "estimated": len(done) - refused, "refused": refused, "files": files}
    answer(data, show, as_json=as_json, to_check=bool(refused))
