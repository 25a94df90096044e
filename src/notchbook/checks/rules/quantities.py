"""Does each piece say how often it is cut, and in what?"""

from collections.abc import Iterator

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.subject import Subject
from notchbook.pattern import Finding, Pattern, Piece, Severity, spoken
from notchbook.pattern.folding import fold_runs


@check(
    id="quantities",
    title="Each piece says how often it is cut",
    rationale=(
        "The cutter cuts what the card says. A piece that is given for no material is not cut at all; a "
        "half piece without a fold comes out as half a garment; a piece with a fold that is cut as a pair "
        "gives two wholes. These slips cost the whole lay, for nobody in the cutting room knows the "
        "style."
    ),
    severity=Severity.STOP,
    reads=("pieces", "instructions", "edges"),
    messages={
        "quantity-none": "{piece} is cut in no material.",
        "quantity-below-one": "{piece} is cut less than once in {material}.",
        "quantity-twice": "{piece} is given twice for {material}.",
        "quantity-material-unknown": "{piece} is cut in {material}, which is no material of this pattern.",
        "fold-missing": "{piece} is half a piece, but no edge of it lies on the fold.",
        "fold-several": "{piece} has several lines on the fold.",
        "fold-unexpected": "{piece} is cut as it is drawn, but has an edge on the fold.",
        "pair-of-one-side": "{piece} belongs to one side of the body and cannot be cut as a pair.",
    },
    suggestion="Correct how the piece is cut: on the fold, as a pair or once, and in which materials.",
)
def quantities(subject: Subject) -> Iterator[Finding]:
    """Pieces whose quantities, materials or way of cutting do not fit together."""
    for piece in subject.pattern.pieces.values():
        yield from _materials(subject.pattern, piece)
        yield from _cut_as(piece)


def _materials(pattern: Pattern, piece: Piece) -> Iterator[Finding]:
    if not piece.instructions:
        yield _said("quantity-none", piece)
    seen: set[str] = set()
    for told in piece.instructions:
        if told.times < 1:
            yield _said("quantity-below-one", piece, Reading(told.times, 1, ""), material=told.material)
        if told.material in seen:
            yield _said("quantity-twice", piece, material=told.material)
        if told.material not in pattern.materials:
            yield _said("quantity-material-unknown", piece, material=told.material)
        seen.add(told.material)


def _cut_as(piece: Piece) -> Iterator[Finding]:
    folds = len(fold_runs(piece))
    if piece.cut == "fold" and folds != 1:
        yield _said("fold-several" if folds else "fold-missing", piece, Reading(folds, 1, ""))
    if piece.cut != "fold" and folds:
        yield _said("fold-unexpected", piece, Reading(folds, 0, ""))
    if piece.cut == "pair" and piece.side != "both":
        yield _said("pair-of-one-side", piece)


def _said(code: str, piece: Piece, reading: Reading | None = None, **facts: str) -> Finding:
    return quantities.finding(code, Spot(piece.name), reading, piece=spoken(piece.name), **facts)
