"""Makes the bodies of the survey from data/survey/ansur: at the level of the navel, and at the natural waist.

The survey measured the waist at the navel. The natural waist lies midway between the tenth rib and the
iliac crest (ISO 8559-1). Its girth was not measured: it is taken as 20 mm less than at the navel for women
and 10 mm less for men (our assumption, from two populations compared; no source). So the bodies at the
natural waist are estimates.
"""

from __future__ import annotations

import argparse
import csv
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Literal, get_args

from house import ROOT

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


def main(words: list[str]) -> int:
    """Write both files into a folder."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--out", type=Path, default=ROOT / "out" / "survey", help="folder of the two files")
    folder: Path = parser.parse_args(words).out
    for level in get_args(Level):
        path = folder / f"bodies-{level}.csv"
        print(f"{path}: {write(level, path)} bodies")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
