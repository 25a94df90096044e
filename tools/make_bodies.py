"""Makes the bodies of the survey from data/survey/ansur: at the level of the navel, and at the natural waist.

The survey measured the waist at the navel. The natural waist lies midway between the tenth rib and the
iliac crest (ISO 8559-1). Its girth was not measured: it is taken as 20 mm less than at the navel for women
and 10 mm less for men (our assumption, from two populations compared; no source). So the bodies at the
natural waist are estimates.

A third file holds every measure of the book that the survey took, as the survey took it: its lines say so
(`taken_as` survey, `waist_level` navel, `waist_drop`, `population`), so that they can be judged as such.
"""

from __future__ import annotations

import argparse
import csv
import sys
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Literal, get_args

from house import ROOT
from survey_rows import rows, survey_values

Level = Literal["navel", "natural"]
Group = Literal["women", "men"]

SOURCE = ROOT / "data" / "survey" / "ansur"
SMALLER_AT_NATURAL_WAIST = {"women": 20.0, "men": 10.0}
"""mm; see above."""


@dataclass(frozen=True)
class SurveyBody:
    """One row of the survey at one level of the waist; lengths in mm."""

    id: str
    group: Group
    height: float
    waist_girth: float
    hip_girth: float
    hip_depth: float


def bodies(level: Level, groups: tuple[Group, ...] = get_args(Group)) -> Iterator[SurveyBody]:
    """Every row of the survey, women first."""
    for group in groups:
        with (SOURCE / f"{group}.csv").open(encoding="utf-8", newline="") as stream:
            for row in csv.DictReader(stream):
                yield _body(level, group, row)


def _body(level: Level, group: Group, row: dict[str, str]) -> SurveyBody:
    mm = {name: float(text) for name, text in row.items()}
    waist, height = mm["waistcircumference"], mm["waistheightomphalion"]
    if level == "natural":
        waist -= SMALLER_AT_NATURAL_WAIST[group]
        height = (mm["tenthribheight"] + mm["iliocristaleheight"]) / 2.0
    depth = height - mm["buttockheight"]
    name = f"{group[0]}{row['row']}"
    return SurveyBody(name, group, mm["stature"], waist, mm["buttockcircumference"], depth)


def write(level: Level, path: Path) -> int:
    """Write the bodies as `notchbook mtm` reads them; how many there are."""
    path.parent.mkdir(parents=True, exist_ok=True)
    columns = ("height", "waist_girth", "hip_girth", "hip_depth")
    with path.open("w", encoding="utf-8", newline="") as stream:
        writer = csv.writer(stream, lineterminator="\n")
        writer.writerow(("id", "unit", *columns))
        count = 0
        for body in bodies(level):
            writer.writerow((body.id, "mm", *(f"{getattr(body, column):.1f}" for column in columns)))
            count += 1
    return count


def write_as_taken(path: Path) -> int:
    """Write every row with all measures that the survey took, as `notchbook measures check` reads them."""
    path.parent.mkdir(parents=True, exist_ok=True)
    lines = [_as_taken(group, row) for group in get_args(Group) for row in rows(group)]
    with path.open("w", encoding="utf-8", newline="") as stream:
        writer = csv.DictWriter(stream, tuple(lines[0]), restval="", lineterminator="\n")
        writer.writeheader()
        writer.writerows(lines)
    return len(lines)


def _as_taken(group: Group, row: Mapping[str, float]) -> dict[str, str]:
    drop = (row["tenthribheight"] + row["iliocristaleheight"]) / 2.0 - row["waistheightomphalion"]
    about = {"id": f"{group[0]}{row['row']:.0f}", "unit": "mm", "population": group, "taken_as": "survey"}
    # A navel above the natural waist (34 of the 3,034 rows) cannot be written as a drop.
    about |= {"waist_level": "navel", "waist_drop": f"{drop:.1f}" if drop > 0 else ""}
    return about | {key: f"{value:.1f}" for key, value in survey_values(row, group).items()}


def main(words: list[str]) -> int:
    """Write the three files into a folder."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--out", type=Path, default=ROOT / "out" / "survey", help="folder of the files")
    folder: Path = parser.parse_args(words).out
    for level in get_args(Level):
        path = folder / f"bodies-{level}.csv"
        print(f"{path}: {write(level, path)} bodies")
    path = folder / "bodies-as-taken.csv"
    print(f"{path}: {write_as_taken(path)} bodies")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
