"""Draws bodice and sleeve, and the lower and stretch blocks, of invented bodies into docs/sheets.

    python tools/make_block_sheets.py [--pictures FOLDER]

``--pictures FOLDER`` writes them as PNG too, to be looked at.
"""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from house import ROOT


def main(words: list[str]) -> int:
    """Write every sheet; 1 when a body was refused. Lower and stretch blocks go into docs/sheets/lower."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--out", type=Path, default=ROOT / "docs" / "sheets")
    parser.add_argument("--pictures", type=Path, help="folder for PNG pictures")
    chosen = parser.parse_args(words)
    sys.path.insert(0, str(ROOT / "benchmarks"))
    from lower_sheets import write_lower_sheets
    from upper_sheets import write_sheets

    refused = write_sheets(chosen.out, chosen.pictures)
    refused += write_lower_sheets(chosen.out / "lower", chosen.pictures)
    return 1 if refused else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
