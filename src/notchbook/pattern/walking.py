"""Walking a seam: one run against the other, from notch to notch, on the sew line."""

from dataclasses import dataclass

from notchbook.pattern.cut import Notch
from notchbook.pattern.names import last_word
from notchbook.pattern.pattern import Pattern
from notchbook.pattern.piece import Edge
from notchbook.pattern.resolve import require
from notchbook.pattern.seam import Seam
from notchbook.pattern.sewn import Directed, locate, run_length, run_of, sewn_edge_length


@dataclass(frozen=True, slots=True)
class Station:
    """A notch met on the walk: how far from the beginning on each run, mm; None where it is missing."""

    notch: str
    first: float | None
    second: float | None


@dataclass(frozen=True, slots=True)
class Walk:
    """A walked seam: lengths as sewn (mm), declared ease, and the notches on the way."""

    seam: str
    first: float
    second: float
    ease: float
    stations: tuple[Station, ...]

    @property
    def misfit(self) -> float:
        """How much the second run is too long, declared ease apart, mm (negative: too short)."""
        return self.second - self.first - self.ease


def walk_seam(pattern: Pattern, seam: Seam) -> Walk:
    """Walk the two runs of a seam; NameLost when an edge of it is gone."""
    first = run_length(pattern, seam.first)
    second = run_length(pattern, seam.second)
    return Walk(seam.name, first, second, seam.ease, _stations(pattern, seam))


def seam_misfit(pattern: Pattern, seam: Seam) -> float:
    """The misfit of a walk along the seam, mm, without its notches; NameLost when an edge of it is gone."""
    return run_length(pattern, seam.second) - run_length(pattern, seam.first) - seam.ease


def _stations(pattern: Pattern, seam: Seam) -> tuple[Station, ...]:
    """Notches of a seam are paired by name: mates share the last word, their sides apart."""
    runs = (run_of(pattern, seam.first), run_of(pattern, seam.second))
    places: dict[str, list[float | None]] = {}
    for notch in pattern.notches.values():
        if not notch.serves(seam.name):
            continue
        label = last_word(notch.name)
        found = places.setdefault(label, [None, None])
        for index, run in enumerate(runs):
            distance = _distance_on_run(pattern, run, notch)
            if distance is not None:
                found[index] = distance
    stations = (Station(label, first, second) for label, (first, second) in places.items())
    return tuple(sorted(stations, key=_along))


def _along(station: Station) -> float:
    """How far along a station stands: on the first run, else on the second, else at the beginning."""
    if station.first is not None:
        return station.first
    return station.second if station.second is not None else 0.0


def _distance_on_run(pattern: Pattern, run: tuple[Directed, ...], notch: Notch) -> float | None:
    """How far along the run the notch lies, as sewn; None when it lies on no edge of the run."""
    members = require(pattern, notch.place.edge)
    if not any(step.edge.name in members for step in run):
        return None
    found = locate(pattern, notch.place)
    travelled = 0.0
    for step in run:
        if step.edge.name == found.edge.name:
            along = found.distance if step.forward else step.edge.length - found.distance
            return travelled + along * _drawn_share(pattern, step.edge)
        travelled += sewn_edge_length(pattern, step.edge)
    return None


def _drawn_share(pattern: Pattern, edge: Edge) -> float:
    """How much of the length of an edge is left when it is gathered or eased in, as a share."""
    return sewn_edge_length(pattern, edge) / edge.length if edge.length > 0.0 else 1.0
