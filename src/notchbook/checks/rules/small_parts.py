"""Are there parts on a small child's garment that it could swallow?"""

from collections.abc import Iterator

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.subject import Subject
from notchbook.pattern import Finding, Mark, Severity
from notchbook.pattern.names import last_word, split_side

_FASTENINGS = frozenset({"hook", "eye"})
"""How marks are called where hooks, eyes and press studs are sewn on."""


@check(
    id="small-parts",
    title="No small parts on a small child's garment",
    rationale=(
        "A child of up to three years puts into its mouth what it can pull off. Buttons, hooks and press "
        "studs that fit into the cylinder of 16 CFR 1501 (31.7 mm across, from memory) are looked at up to a "
        "height of 98 cm. This is a caution and no legal advice: the rules of the place where it is worn and "
        "a licensed test house decide."
    ),
    severity=Severity.LOOK,
    reads=("pieces", "measures"),
    messages={"small-parts-of-child": "Buttons or hooks are on the garment of a child of up to three years."},
    suggestion="Look up the rules that hold where it is worn; close it with a zip or ties inside, or sew on "
    "and test the parts as those rules ask.",
)
def small_parts(subject: Subject) -> Iterator[Finding]:
    """Buttons, hooks and press studs on the garment of a child up to that height, mm, told once."""
    height = None if subject.body is None else subject.body.get("height")
    if height is None or height > subject.limits.small_child_height:
        return
    marked = [
        (piece, mark)
        for piece in subject.pattern.pieces.values()
        for mark in piece.marks
        if _is_small_part(mark)
    ]
    if marked:
        piece, mark = marked[0]
        names = tuple(one.name for _, one in marked)
        spot = Spot(piece.name, mark.name, mark.position, names)
        reading = Reading(height, subject.limits.small_child_height)
        yield small_parts.finding("small-parts-of-child", spot, reading)


def _is_small_part(mark: Mark) -> bool:
    return mark.kind == "button" or last_word(split_side(mark.name)[0]) in _FASTENINGS
