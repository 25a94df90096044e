"""The house table that a command was given."""

from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from notchbook.finish import HouseTable


def read_house(path: Path | None) -> "HouseTable | None":
    """The table in the file; None without one, so that the table of the program is taken."""
    from notchbook.finish import read_house_table

    return None if path is None else read_house_table(path)
