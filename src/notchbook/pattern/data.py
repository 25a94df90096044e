"""A pattern as plain data and back: what is stored with a revision and written to a file."""

from collections.abc import Iterable, Mapping
from dataclasses import asdict
from typing import Any, TypeVar, cast, get_args

from notchbook.errors import GeometryError, HouseFault, InputError
from notchbook.geometry import Path, Point
from notchbook.pattern.cut import Allowance, CornerStyle, Notch
from notchbook.pattern.elastic import Elastic
from notchbook.pattern.making import LeatherMaking
from notchbook.pattern.names import is_name
from notchbook.pattern.operation import Operation
from notchbook.pattern.pattern import Fate, Group, Pattern, frozen_map
from notchbook.pattern.piece import (
    CutInstruction,
    Edge,
    Grain,
    InnerDart,
    Intake,
    InternalLine,
    Mark,
    Piece,
)
from notchbook.pattern.place import Place
from notchbook.pattern.seam import EdgeUse, Seam
from notchbook.pattern.typed import typed

PATTERN_FORMAT = 4
"""Version of this form; raised when a reader of the old form could misread the new one. 2 has inner darts,
the places between which ease lies and marks that are measured from; 3 has elastics and intakes that
are no darts; 4 has lines of the sewing order, buttonholes and what else is marked for closures, pockets and
lapels. A pattern is written in the oldest form that says it all."""

_FORMATS = (1, 2, 3, PATTERN_FORMAT)

_NEW_IN_4 = frozenset({"buttonhole", "stitch_line", "roll_line", "cut_line", "button"})

Data = dict[str, Any]

_Named = TypeVar("_Named", Piece, Seam, Notch, Elastic, Operation)


def pattern_to_data(pattern: Pattern) -> Data:
    """The pattern as JSON-ready data: lengths in mm, angles in degrees, names as they are."""
    data: Data = {
        "format": _oldest_form(pattern),
        "pieces": [_piece_data(piece) for piece in pattern.pieces.values()],
        "seams": [_seam_data(seam) for seam in pattern.seams.values()],
        "notches": [_notch_data(notch) for notch in pattern.notches.values()],
        "groups": {n: {"members": list(g.members), "by": g.by} for n, g in pattern.groups.items()},
        "fates": {
            n: {"kind": f.kind, "into": list(f.into), "by": f.by, "reason": f.reason}
            for n, f in pattern.fates.items()
        },
        "allowances": {
            n: {"class": a.allowance_class, "width": a.width} for n, a in pattern.allowances.items()
        },
        "corners": dict(pattern.corners),
        "materials": dict(pattern.materials),
    }
    if pattern.elastics:
        data["elastics"] = [{**asdict(one), "edges": list(one.edges)} for one in pattern.elastics.values()]
    if pattern.operations:
        data["operations"] = [
            {**asdict(one), "at": list(one.at), "after": list(one.after)}
            for one in pattern.operations.values()
        ]
    if pattern.making is not None:
        data["making"] = asdict(pattern.making)
    return data


def pattern_from_data(data: Mapping[str, Any]) -> Pattern:
    """The pattern from its data; InputError when the form is newer or the data are not a pattern's."""
    if not isinstance(data, Mapping):
        raise InputError("pattern-data-damaged", detail="a mapping of names was expected")
    form = data.get("format")
    if isinstance(form, bool) or form not in _FORMATS:
        raise InputError("pattern-format-unknown", found=form, known=PATTERN_FORMAT)
    try:
        pattern = Pattern(
            pieces=_named(_piece_from(d) for d in data["pieces"]),
            seams=_named(_seam_from(d) for d in data["seams"]),
            notches=_named(_notch_from(d) for d in data["notches"]),
            groups=frozen_map(
                (_name(n), typed(Group(tuple(g["members"]), g["by"]))) for n, g in data["groups"].items()
            ),
            fates=frozen_map(
                (_name(n), typed(Fate(f["kind"], tuple(f["into"]), f["by"], f["reason"])))
                for n, f in data["fates"].items()
            ),
            allowances=frozen_map(
                (_name(n), typed(Allowance(a["class"], a["width"]))) for n, a in data["allowances"].items()
            ),
            corners=frozen_map((_name(n), _corner(style)) for n, style in data["corners"].items()),
            materials=frozen_map((_word(n), _word(said)) for n, said in data["materials"].items()),
            elastics=_named(_elastic_from(d) for d in data.get("elastics", ())),
            operations=_named(_operation_from(d) for d in data.get("operations", ())),
            making=_making_from(data.get("making")),
        )
        _ = pattern.edges  # a name that stands twice is refused here
    except KeyError as error:
        raise InputError("pattern-data-damaged", detail=f"{error} is missing") from error
    except (GeometryError, HouseFault) as error:
        raise InputError("pattern-data-damaged", detail=error.text()) from error
    except (TypeError, AttributeError, ValueError) as error:
        raise InputError("pattern-data-damaged", detail=str(error)) from error
    return pattern


def _oldest_form(pattern: Pattern) -> int:
    kinds: set[str] = set()
    for piece in pattern.pieces.values():
        kinds |= {line.kind for line in piece.lines} | {mark.kind for mark in piece.marks}
    if pattern.operations or pattern.making is not None or kinds & _NEW_IN_4:
        return PATTERN_FORMAT
    if pattern.elastics or any(intake.kind != "dart" for intake in pattern.intakes.values()):
        return 3
    return 2 if _has_inner_parts(pattern) else 1


def _has_inner_parts(pattern: Pattern) -> bool:
    return any(
        piece.inner_darts
        or any(line.kind == "dart_leg" for line in piece.lines)
        or any(mark.kind == "datum" for mark in piece.marks)
        for piece in pattern.pieces.values()
    ) or any(seam.ease_between is not None for seam in pattern.seams.values())


def _named(things: Iterable[_Named]) -> Mapping[str, _Named]:
    """The things by their names, each of the right types and each name once."""
    found: dict[str, _Named] = {}
    for thing in things:
        if _name(thing.name) in found:
            raise ValueError(f"the name {thing.name} stands twice")
        found[thing.name] = typed(thing)
    return frozen_map(found)


def _name(text: object) -> str:
    if not isinstance(text, str) or not is_name(text):
        raise ValueError(f"{text!r} is no name")
    return text


def _word(text: object) -> str:
    if not isinstance(text, str):
        raise TypeError(f"{text!r} is no text")
    return text


def _truth(value: object) -> bool:
    if not isinstance(value, bool):
        raise TypeError(f"{value!r} is neither true nor false")
    return value


def _corner(style: object) -> CornerStyle:
    for known in get_args(CornerStyle):
        if style == known:
            return cast(CornerStyle, known)
    raise ValueError(f"{style!r} is no way to make a corner")


def _piece_data(piece: Piece) -> Data:
    data: Data = {
        "name": piece.name,
        "title": piece.title,
        "outline": [
            {"name": e.name, "start": e.start, "end": e.end, "kind": e.kind, "path": e.path.to_data()}
            for e in piece.outline
        ],
        "intakes": [_intake_data(intake) for intake in piece.intakes],
        "lines": [
            {"name": line.name, "kind": line.kind, "path": line.path.to_data()} for line in piece.lines
        ],
        "marks": [
            {"name": m.name, "kind": m.kind, "x": m.position.x, "y": m.position.y} for m in piece.marks
        ],
        "grain": {"degrees": piece.grain.degrees, "one_way": piece.grain.one_way},
        "cut": piece.cut,
        "side": piece.side,
        "instructions": [{"material": c.material, "times": c.times} for c in piece.instructions],
        "rule": piece.rule,
    }
    if piece.stretches:
        data["stretches"] = True
    if piece.inner_darts:
        data["inner_darts"] = [asdict(dart) for dart in piece.inner_darts]
    return data


def _intake_data(intake: Intake) -> Data:
    """The intake; of one that is no dart what makes it fold or draw in as well."""
    words = ["name", "kind", "mouth", "first_leg", "second_leg", "point", "fold_toward"]
    if intake.kind != "dart":
        words += ["first_line", "second_line", "stitched", "edge", "amount"]
    return {word: getattr(intake, word) for word in words}


def _intake_from(data: Mapping[str, Any]) -> Intake:
    intake = typed(Intake(**data))
    needed = {"legs": intake.has_legs, "lines": intake.is_folded, "edge": intake.is_drawn_in}
    given = {
        "legs": intake.first_leg and intake.second_leg and intake.point,
        "lines": intake.first_line and intake.second_line,
        "edge": intake.edge,
    }
    missing = [word for word, wanted in needed.items() if wanted and not given[word]]
    if missing:
        raise ValueError(f"a {intake.kind} needs its {' and '.join(missing)}")
    return intake


def _piece_from(data: Mapping[str, Any]) -> Piece:
    return Piece(
        name=data["name"],
        title=data["title"],
        outline=tuple(
            typed(Edge(_name(e["name"]), Path.from_data(e["path"]), e["start"], e["end"], e["kind"]))
            for e in data["outline"]
        ),
        intakes=tuple(_intake_from(i) for i in data["intakes"]),
        lines=tuple(
            typed(InternalLine(line["name"], Path.from_data(line["path"]), line["kind"]))
            for line in data["lines"]
        ),
        inner_darts=tuple(typed(InnerDart(**d)) for d in data.get("inner_darts", ())),
        marks=tuple(typed(Mark(m["name"], Point(m["x"], m["y"]), m["kind"])) for m in data["marks"]),
        grain=typed(Grain(data["grain"]["degrees"], data["grain"]["one_way"])),
        cut=data["cut"],
        side=data["side"],
        instructions=tuple(typed(CutInstruction(c["material"], c["times"])) for c in data["instructions"]),
        rule=data["rule"],
        stretches=_truth(data.get("stretches", False)),
    )


def _use_data(use: EdgeUse) -> Data:
    return {"edge": use.edge, "starts_at": use.starts_at, "side": use.side}


def _seam_data(seam: Seam) -> Data:
    data: Data = {
        "name": seam.name,
        "first": [_use_data(use) for use in seam.first],
        "second": [_use_data(use) for use in seam.second],
        "ease": seam.ease,
        "allowance_class": seam.allowance_class,
        "seam_class": seam.seam_class,
    }
    if seam.ease_between is not None:
        data["ease_between"] = list(seam.ease_between)
    if seam.gives != "longer":
        data["gives"] = seam.gives
    return data


def _seam_from(data: Mapping[str, Any]) -> Seam:
    return Seam(
        name=data["name"],
        first=tuple(typed(EdgeUse(**use)) for use in data["first"]),
        second=tuple(typed(EdgeUse(**use)) for use in data["second"]),
        ease=data["ease"],
        allowance_class=data["allowance_class"],
        seam_class=data["seam_class"],
        ease_between=_labels(data.get("ease_between")),
        gives=data.get("gives", "longer"),
    )


def _labels(found: object) -> tuple[str, str] | None:
    if found is None:
        return None
    if not isinstance(found, list) or len(found) != 2:
        raise ValueError("ease lies between two labels")
    return _word(found[0]), _word(found[1])


def _notch_data(notch: Notch) -> Data:
    place = notch.place
    return {
        "name": notch.name,
        "place": {
            "edge": place.edge,
            "from_point": place.from_point,
            "amount": place.amount,
            "measure": place.measure,
            "notch": place.notch,
        },
        "kind": notch.kind,
        "seam": notch.seam,
        "purpose": notch.purpose,
    }


def _notch_from(data: Mapping[str, Any]) -> Notch:
    return Notch(data["name"], typed(Place(**data["place"])), data["kind"], data["seam"], data["purpose"])


def _elastic_from(data: Mapping[str, Any]) -> Elastic:
    edges = tuple(map(_name, data["edges"]))
    return Elastic(
        data["name"], data["title"], edges, data["share"], data["width"], data["goes_round"], data["girth"]
    )


def _operation_from(data: Mapping[str, Any]) -> Operation:
    at, after = (tuple(map(_name, data[word])) for word in ("at", "after"))
    return Operation(data["name"], data["stage"], data["text"], at, after)


def _making_from(data: Mapping[str, Any] | None) -> LeatherMaking | None:
    return None if data is None else typed(LeatherMaking(**data))
