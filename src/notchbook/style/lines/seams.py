"""The seam along a style line, and its notches."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from notchbook.geometry import Path
from notchbook.pattern import EdgeUse, Notch, NotchKind, Pattern, Place, Seam, part_name, run_length
from notchbook.pattern.names import last_word

BALANCE = 0.45
"""Where the balance notch stands on the line, as a share: off the middle, so that a part turned
about does not fit. Common practice, no source."""

APEX = 50.0
"""mm from where a curve is deepest to the notches above and below it. Common practice, no source."""

NotchChoice = Literal["balance", "apex", "none"]


@dataclass(frozen=True, slots=True)
class FaceUse:
    """The edge or group along a cut on one part, walked from the named end."""

    part: str
    edge: str
    starts_at: str


def notch_kind(piece: str) -> NotchKind:
    """Single on the front, double on the back: so a front is never taken for a back. Common practice."""
    return "double" if "back" in last_word(piece).split("_") else "single"


def line_seam(name: str, faces: tuple[FaceUse, FaceUse]) -> Seam:
    """The seam of the two parts of a cut, walked from one end."""
    first, second = ((EdgeUse(face.edge, face.starts_at),) for face in faces)
    return Seam(name, first, second, allowance_class="style_line")


def balance_notches(
    faces: tuple[FaceUse, FaceUse], seam: str, kind: NotchKind, share: float = BALANCE
) -> tuple[Notch, ...]:
    """A pair of notches off the middle of the line, at this share of it."""
    return _pairs(faces, seam, kind, {"balance_notch": (share, "fraction")})


CLEAR = 15.0
"""mm by which a balance notch keeps off the mouth of a dart, for whose notch it could be taken. Own
judgment."""

_SHARES = (BALANCE, 0.55, 0.4, 0.6, 0.35, 0.65, 0.3, 0.7)
"""Where the balance notch may stand instead, in order."""


def clear_share(lengths: Sequence[float]) -> float:
    """Where a balance notch stands on a line of such parts, between which darts open: off the middle, and
    clear of the darts where there is room."""
    whole = sum(lengths)
    joints = [sum(lengths[:count]) for count in range(1, len(lengths))]
    clear = (share for share in _SHARES if all(abs(share * whole - joint) >= CLEAR for joint in joints))
    return next(clear, BALANCE)


def apex_notches(
    pattern: Pattern, faces: tuple[FaceUse, FaceUse], seam: Seam, line: Path, kind: NotchKind
) -> tuple[Notch, ...]:
    """Two pairs, above and below where the line lies farthest from the straight way between its ends.

    ``line`` runs as the seam is walked. They keep off its ends by a quarter of the line.
    """
    length = run_length(pattern, seam.first)
    chord = line.end - line.start
    samples = [line.length * index / 100.0 for index in range(101)]
    apex = max(samples, key=lambda place: abs(chord.cross(line.point_at(place) - line.start)))
    reach = min(APEX, length / 4.0)
    middle = min(max(apex, 2.0 * reach), length - 2.0 * reach) if length > 4.0 * reach else length / 2.0
    labels = ("above_apex_notch", "below_apex_notch")
    if line.start.y < line.end.y:
        labels = labels[::-1]
    return _pairs(
        faces,
        seam.name,
        kind,
        {labels[0]: (middle - reach, "distance"), labels[1]: (middle + reach, "distance")},
    )


def _pairs(
    faces: Sequence[FaceUse],
    seam: str,
    kind: NotchKind,
    places: Mapping[str, tuple[float, Literal["distance", "fraction"]]],
) -> tuple[Notch, ...]:
    return tuple(
        Notch(
            part_name(face.part, label),
            Place(face.edge, face.starts_at, amount, measure),
            kind,
            seam,
            "balance",
        )
        for label, (amount, measure) in places.items()
        for face in faces
    )
