"""A draft at a real terminal: what it asks, what she types, what comes of it."""

import os
import sys
from pathlib import Path

import pytest

from notchbook.app.style_file import read_style
from notchbook.body import MeasureSet, write_measures
from support.command import PROGRAM

pty = pytest.importorskip("pty", reason="needs a terminal of POSIX")

INVENTED = {
    "bust_girth": 920.0,
    "waist_girth": 760.0,
    "back_waist_length": 400.0,
    "front_waist_length": 438.0,
    "center_front_length": 350.0,
    "neck_base_girth": 370.0,
    "shoulder_length": 123.0,
    "scye_depth": 190.0,
    "across_back": 350.0,
    "across_chest": 330.0,
    "neck_to_bust_point": 265.0,
    "bust_point_width": 190.0,
    "upper_arm_girth": 280.0,
    "wrist_girth": 160.0,
    "arm_length": 600.0,
}
"""An invented woman, mm."""

NAVEL = 46.0
"""mm from the natural waist down to the navel on women, average of ANSUR II: a back length taken to it is as
much too long."""


def at_a_terminal(folder: Path, words: list[str], answers: list[str]) -> str:
    """Run the command on a terminal, type an answer at each question; all that stood on the screen."""
    child, terminal = pty.fork()
    if child == 0:
        os.chdir(folder)
        os.execv(PROGRAM[0], [*PROGRAM, *words])
    shown, left = b"", list(answers)
    while True:
        try:
            more = os.read(terminal, 4096)
        except OSError:  # Linux tells so of the end
            break
        if not more:
            break
        shown += more
        if shown.rstrip().endswith(b"Number:") and left:
            os.write(terminal, f"{left.pop(0)}\n".encode())
            shown += b"\n"
    os.waitpid(child, 0)
    os.close(terminal)
    assert not left, "more answers than questions"
    return shown.decode("utf-8", "replace")


@pytest.mark.skipif(sys.platform == "win32", reason="needs a terminal of POSIX")
def test_the_cloth_and_the_waist_are_asked_for_and_the_answers_drafted(tmp_path: Path) -> None:
    back = INVENTED["back_waist_length"] + NAVEL
    measures = {**INVENTED, "back_waist_length": back}
    write_measures(MeasureSet.from_mm("Invented", measures, population="women"), tmp_path / "her.json")
    words = ["draft", "sleeve", "-m", "her.json", "--out", "sleeve.json"]
    shown = at_a_terminal(tmp_path, words, ["9", "2", "2"])
    assert "Type a number from 1 to" in shown
    assert "To which waist were they taken?" in shown
    style = read_style(tmp_path / "sleeve.json")
    assert style.recipe.step("sleeve-1").parameters["fabric"] == "shirting"
    # The slip was planted: what she agreed to lies within two spreads (13 mm) of what was there before it.
    drafted = style.measures.value("back_waist_length")
    assert abs(drafted - INVENTED["back_waist_length"]) < 26.0
    assert drafted < back
