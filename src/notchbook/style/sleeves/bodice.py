"""The panel of a block that carries the front or the back armhole."""

from notchbook.errors import StepRefused
from notchbook.pattern import Lost, Pattern, part_name, resolve


def bodice_panel(pattern: Pattern, bodice: str, which: str) -> str:
    """The name under which a block drafted its panel: ``front``, or ``bodice_front`` of a dress with a waist
    seam. StepRefused ``sleeve-no-panel`` where it has none with an armhole."""
    for name in {edge.split("/", 1)[0]: None for edge in (*pattern.edges, *pattern.groups) if "/" in edge}:
        instance, _, word = name.partition(".")
        has_armhole = not isinstance(resolve(pattern, part_name(name, "armhole")), Lost)
        if instance == bodice and (word == which or word.endswith(f"_{which}")) and has_armhole:
            return name
    blocks = sorted({piece.split(".", 1)[0] for piece in pattern.pieces})
    raise StepRefused("sleeve-no-panel", bodice=bodice, there=blocks or ["nothing"])
