"""One of the wearer's sides out of a pattern's plain data, as a half under plain names.

Every judge of half patterns so judges either side of a pattern whose sides differ. Nothing of the project is
used: whole pieces are parted at their center line (x = 0), what lies on the left is reflected back, and names
lose their side. Dart legs and edges come out in the order of the half.
"""

from copy import deepcopy
from typing import Any

Data = dict[str, Any]
Rows = list[list[Any]]

OTHER = {"left": "right", "right": "left"}


def one_side(data: Data, side: str) -> Data:
    """The data of one side. Pieces without sides belong to both and are kept as they are."""
    pieces = [piece for piece in deepcopy(data["pieces"]) if not piece["name"].endswith(f"@{OTHER[side]}")]
    return {
        "pieces": [_piece(piece, side) for piece in pieces],
        "seams": _of_side(data["seams"], side),
        "notches": _of_side(data["notches"], side),
    }


def _of_side(things: list[Data], side: str) -> list[Data]:
    """Seams or notches of this side under plain names: a seam between the sides joins a thing to itself."""
    kept = (thing for thing in things if not thing["name"].endswith(f"@{OTHER[side]}"))
    return [_plain(deepcopy(thing)) for thing in kept]


def _plain(thing: Any) -> Any:
    """The same with every name freed of its side."""
    if isinstance(thing, str):
        return thing.removesuffix("@left").removesuffix("@right")
    if isinstance(thing, list):
        return [_plain(one) for one in thing]
    if isinstance(thing, dict):
        return {key: _plain(one) for key, one in thing.items()}
    return thing


def _piece(piece: Data, side: str) -> Data:
    is_of_pair = piece["name"].endswith(f"@{side}")
    is_whole = not is_of_pair and any(edge["name"].endswith(f"@{side}") for edge in piece["outline"])
    if is_whole:
        piece = _half(piece, side)
    elif is_of_pair:
        piece = {**piece, "cut": "pair"}
    if side == "left" and (is_whole or is_of_pair):
        piece = _reflected(piece)
    found: Data = _plain(piece)
    return found


def _half(piece: Data, side: str) -> Data:
    """What lies on one side of a whole piece, closed along its center line."""
    other = f"@{OTHER[side]}"
    outline = piece["outline"]
    starts = [
        index
        for index, edge in enumerate(outline)
        if edge["name"].endswith(f"@{side}") and outline[index - 1]["name"].endswith(other)
    ]
    first = starts[0]
    turned = outline[first:] + outline[:first]
    kept = [edge for edge in turned if edge["name"].endswith(f"@{side}")]
    center = next(line for line in piece["lines"] if line["kind"] == "match")
    start, end = kept[-1]["path"][-1][-2:], kept[0]["path"][0][1:]
    fold = {
        "name": center["name"],
        "path": [["M", *start], ["L", *end]],
        "start": kept[-1]["end"],
        "end": kept[0]["start"],
        "kind": "fold",
    }
    half = {**piece, "outline": [*kept, fold], "cut": "fold"}
    for kind in ("lines", "marks", "intakes", "inner_darts"):
        half[kind] = [thing for thing in piece.get(kind, []) if not thing["name"].endswith(other)]
    half["lines"] = [line for line in half["lines"] if line["name"] != center["name"]]
    return half


def _reflected(piece: Data) -> Data:
    """The piece reflected at x = 0, its outline run the other way, as a right one."""
    outline = [
        {**edge, "path": _turned_path(edge["path"]), "start": edge["end"], "end": edge["start"]}
        for edge in reversed(piece["outline"])
    ]
    intakes = [
        {**intake, "first_leg": intake["second_leg"], "second_leg": intake["first_leg"]}
        for intake in piece.get("intakes", [])
    ]
    return {
        **piece,
        "outline": outline,
        "intakes": intakes,
        "lines": [{**line, "path": _mirrored(line["path"])} for line in piece.get("lines", [])],
        "marks": [{**mark, "x": -mark["x"]} for mark in piece.get("marks", [])],
    }


def _mirrored(rows: Rows) -> Rows:
    return [
        [row[0], *(-value if index % 2 == 0 else value for index, value in enumerate(row[1:]))]
        for row in rows
    ]


def _turned_path(rows: Rows) -> Rows:
    """A path of M, L and C reflected at x = 0 and run from its end to its start."""
    corners: list[list[list[float]]] = []
    place = rows[0][1:]
    for row in rows[1:]:
        values = [row[1 + index : 3 + index] for index in range(0, len(row) - 1, 2)]
        corners.append([place, *values])
        place = values[-1]
    turned: Rows = [["M", *place]]
    for segment in reversed(corners):
        back = segment[::-1][1:]
        turned.append(["L" if len(back) == 1 else "C", *(value for corner in back for value in corner)])
    return _mirrored(turned)
