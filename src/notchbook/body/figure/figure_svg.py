"""The drawn figure as SVG text that stands alone."""

from collections.abc import Mapping
from html import escape
from typing import Final

from notchbook.body.figure.figure_parts import Figure, Tape, View, ViewName
from notchbook.body.measure_table import measure_entry

NUMBER_HEIGHT: Final = 3.4
_DIGIT_WIDTH: Final = 1.75

_STYLE: Final = """\
text{font-family:'Atkinson Hyperlegible Next','Noto Sans',sans-serif;font-size:3.1px;text-anchor:middle}
.outline{fill:none;stroke:#1d1c19;stroke-width:.36}
.detail{fill:none;stroke:#8a8272;stroke-width:.18}
.level{fill:none;stroke:#c9c2b0;stroke-width:.18;stroke-dasharray:2.2 .8 .4 .8}
.tape{fill:none;stroke:#1f5f99;stroke-width:.24}
.hidden{stroke-dasharray:1 .8;stroke-width:.18}
.halo{fill:#fbfaf6}
.number{fill:#1f5f99}
.soft .tape{stroke:#b9b3a4}.soft .number{fill:#6d675a}
.picked .tape{stroke:#1f5f99;stroke-width:.7}.picked .number{fill:#1f5f99;font-weight:bold}
path{stroke-linecap:round;stroke-linejoin:round}"""


def figure_svg(
    drawn: Figure,
    values: Mapping[str, str] | None = None,
    picked: str | None = None,
    views: tuple[ViewName, ...] = ("front", "back", "side", "sitting"),
) -> str:
    """The views side by side, mm of the drawing, with title and description for each tape.

    ``values`` are texts by measure key, written in place of the number; ``picked`` is one key whose line
    stands out thick and blue while the others are soft.
    """
    shown = [view for view in drawn.views if view.name in views]
    width = sum(view.width for view in shown)
    height = max(view.height for view in shown)
    parts, left = [], 0.0
    for view in shown:
        parts.append(f'<g id="{view.name}" transform="translate({left:.2f} 0)">')
        parts += _view(view, values or {}, picked)
        parts.append("</g>")
        left += view.width
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width:.2f} {height:.2f}" role="img" '
        f'width="{width:.2f}mm" height="{height:.2f}mm">'
        f"<title>Where the tape goes: {drawn.population}, {', '.join(view.name for view in shown)}</title>"
        f'<style>{_STYLE}</style><rect class="halo" width="{width:.2f}" height="{height:.2f}"/>'
        f"{''.join(parts)}</svg>\n"
    )


def number_box(tape: Tape, text: str | None = None) -> tuple[float, float, float, float]:
    """Left, top, right and bottom of the number or text at the anchor, mm of the drawing."""
    words = str(tape.number) if text is None else text
    half = _DIGIT_WIDTH * len(words) / 2.0 + 0.35
    x, y = tape.anchor.x, tape.anchor.y
    return x - half, y - NUMBER_HEIGHT / 2.0, x + half, y + NUMBER_HEIGHT / 2.0


def _view(view: View, values: Mapping[str, str], picked: str | None) -> list[str]:
    lines = [f'<path class="level" d="{line}"/>' for line in view.levels]
    lines += [f'<path class="detail" d="{line}"/>' for line in view.details]
    lines += [f'<path class="outline" d="{line}"/>' for line in view.outline]
    ordered = sorted(view.tapes, key=lambda tape: tape.key == picked)
    return lines + [_tape(tape, values.get(tape.key), picked) for tape in ordered]


def _tape(tape: Tape, value: str | None, picked: str | None) -> str:
    entry = measure_entry(tape.key)
    words = str(tape.number) if value is None else value
    look = "" if picked is None else ' class="picked"' if tape.key == picked else ' class="soft"'
    left, top, right, bottom = number_box(tape, words)
    hidden = f'<path class="tape hidden" d="{tape.hidden_path}"/>' if tape.hidden_path else ""
    return (
        f'<g data-measure="{tape.key}"{look}><title>{entry.number}. {escape(entry.label)}</title>'
        f"<desc>{escape(entry.definition)}</desc>{hidden}"
        f'<path class="tape" d="{tape.path}"/>'
        f'<rect class="halo" x="{left:.2f}" y="{top:.2f}" width="{right - left:.2f}" '
        f'height="{bottom - top:.2f}"/>'
        f'<text class="number" x="{tape.anchor.x:.2f}" y="{tape.anchor.y + 1.1:.2f}">{escape(words)}</text>'
        "</g>"
    )
