"""The band as a piece: drawn, sewn to its opening, marked in quarters."""

from dataclasses import dataclass, replace

from notchbook.geometry import Path, Point
from notchbook.pattern import (
    Allowance,
    CutInstruction,
    Edge,
    EdgeUse,
    Gives,
    InternalLine,
    Notch,
    Pattern,
    Piece,
    Place,
    Seam,
    part_name,
    piece_name,
    require,
    without_elastics_on,
)
from notchbook.style._band_materials import BAND_ROWS, BandMaterial
from notchbook.style._band_openings import Opening, place_along


@dataclass(frozen=True)
class Band:
    """A band of a material round an opening, mm: its ``length`` as the opening runs (half of it where the
    opening is a half) and its finished ``depth``. ``slug`` is the step that names it."""

    slug: str
    opening: Opening
    length: float
    depth: float
    material: BandMaterial

    @property
    def name(self) -> str:
        """The name of the piece."""
        return piece_name(self.slug, "band")

    @property
    def is_laid_on(self) -> bool:
        """Whether it is laid onto the edge that is turned over it, and not seamed to it: bare elastic."""
        return BAND_ROWS[self.material].layers == 1

    @property
    def start(self) -> str:
        """The corner at which the sewn edge begins."""
        return self.at("lower_center" if self.opening.is_half else "lower_left")

    @property
    def seam_class(self) -> str:
        """The allowance class of the opening."""
        if self.is_laid_on:
            return "elastic_edge"
        return "neckline" if self.opening.word == "neck" else "overlock"

    def at(self, word: str) -> str:
        """The name of a part of the piece."""
        return part_name(self.name, word)


def with_band(pattern: Pattern, band: Band) -> Pattern:
    """The pattern with the band cut, sewn to its opening and marked."""
    after = without_elastics_on(pattern, _living(pattern, band.opening))
    after = after if band.is_laid_on else _unturned(after, band.opening)
    after = after.with_pieces(_piece(band)).with_seams(*_seams(band))
    after = after.with_notches(*_quarters(pattern, band)).with_allowances(_allowances(band))
    return after if band.material == "self" else after.with_materials({band.material: band.material})


def _allowances(band: Band) -> dict[str, Allowance]:
    """Both edges of a folded band go into the seam; an elastic is laid on and has none."""
    opening = Allowance(band.seam_class)
    own = Allowance("bound") if band.is_laid_on else opening
    found = dict.fromkeys((use.edge for use in band.opening.uses), opening)
    return {**found, band.at("lower"): own, band.at("upper"): own}


def _piece(band: Band) -> Piece:
    """The band laid flat, its sewn edge below; half of it from its fold where the opening is a half."""
    opening, length = band.opening, band.length
    height = band.depth * BAND_ROWS[band.material].layers
    corners = [Point(0.0, 0.0), Point(length, 0.0), Point(length, height), Point(0.0, height)]
    words = ["lower", "right_end", "upper", "left_end"]
    points = ["lower_left", "lower_right", "upper_right", "upper_left"]
    if opening.is_half:
        words = ["lower", "end", "upper", "center"]
        points = ["lower_center", "lower_end", "upper_end", "upper_center"]
    free = {"lower", "upper"} if band.is_laid_on else {"upper"}
    outline = tuple(
        Edge(
            band.at(word),
            Path.line(corners[index], corners[(index + 1) % 4]),
            band.at(points[index]),
            band.at(points[(index + 1) % 4]),
            "fold" if word == "center" else "plain" if word in free else "seam",
        )
        for index, word in enumerate(words)
    )
    fold = Path.line(Point(0.0, height / 2.0), Point(length, height / 2.0))
    return Piece(
        name=band.name,
        title=f"{opening.word.replace('_', ' ').capitalize()} {'elastic' if band.is_laid_on else 'band'}",
        outline=outline,
        lines=() if band.is_laid_on else (InternalLine(band.at("fold_line"), fold, "fold_line"),),
        cut="fold" if opening.is_half else "pair",
        instructions=(CutInstruction(band.material),),
        rule=band.slug,
    )


def _unturned(pattern: Pattern, opening: Opening) -> Pattern:
    """The pattern with the edges of the opening sewn and no longer turned up or left free."""
    members = _living(pattern, opening)
    carriers = dict.fromkeys(pattern.carriers[member] for member in sorted(members))
    changed = [
        replace(
            pattern.pieces[name],
            outline=tuple(
                replace(edge, kind="seam") if edge.name in members else edge
                for edge in pattern.pieces[name].outline
            ),
        )
        for name in carriers
    ]
    return pattern.with_pieces(*changed)


def _living(pattern: Pattern, opening: Opening) -> frozenset[str]:
    """The edges of the opening as they are now."""
    return frozenset(member for use in opening.uses for member in require(pattern, use.edge))


def _seams(band: Band) -> tuple[Seam, ...]:
    """The band stretched onto the opening, and the band closed to a ring; an elastic is only closed."""
    opening = band.opening
    if opening.is_half:
        end, point = band.at("end"), band.at("lower_end")
        closing = ((EdgeUse(end, point, "right"),), (EdgeUse(end, point, "left"),))
    else:
        closing = (
            (EdgeUse(band.at("left_end"), band.at("lower_left")),),
            (EdgeUse(band.at("right_end"), band.at("lower_right")),),
        )
    ring = Seam(part_name(band.slug, "band_end"), *closing, allowance_class="overlock")
    if band.is_laid_on:
        return (ring,)
    sewn = (EdgeUse(band.at("lower"), band.start),)
    ease = opening.length - band.length
    name = part_name(band.slug, opening.word)
    gives: Gives = "shorter" if ease > 0.0 else "longer"
    return Seam(name, sewn, opening.uses, ease, band.seam_class, gives=gives), ring


_QUARTERS = {"quarter_notch": 0.25, "half_notch": 0.5, "three_quarter_notch": 0.75}
"""Where the marks of a whole ring stand, from its beginning."""


def _quarters(pattern: Pattern, band: Band) -> list[Notch]:
    """Quarter marks on band and opening; the centers of the body are two of them where it is a half."""
    opening, seam = band.opening, part_name(band.slug, band.opening.word)
    serves = None if band.is_laid_on else seam
    found = []
    for word, share in ({"quarter_notch": 0.5} if opening.is_half else _QUARTERS).items():
        own = Place(band.at("lower"), band.start, share * band.length)
        mate = place_along(pattern, opening, share * opening.length)
        found.append(Notch(band.at(word), own, seam=serves, purpose="quarter"))
        found.append(Notch(part_name(seam, word), mate, seam=serves, purpose="quarter"))
    return found
