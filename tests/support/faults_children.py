"""Faults planted in what a small child wears: parts that it could swallow.

The limit of age is that of 16 CFR 1501 (children under three years), the height that of the size for three
years, 98 cm; both from memory.
"""

from dataclasses import replace

from notchbook.checks import Subject
from notchbook.geometry import Point
from notchbook.pattern import Mark, Pattern
from notchbook.pattern.piece import MarkKind
from support.faults import Made, fault, harmless


def _marked(skirt: Pattern, height: float, name: str, kind: MarkKind) -> Subject:
    piece = skirt.pieces["skirt.front"]
    mark = Mark(f"fastened.front/{name}", Point(50.0, 300.0), kind)
    worn = skirt.with_pieces(replace(piece, marks=(*piece.marks, mark)))
    return Subject(worn, {"height": height}, is_block=False)


@fault("small-parts", "small-parts-of-child", measured=980.0)
def buttons_of_a_child_of_three(skirt: Pattern) -> Made:
    return _marked(skirt, 980.0, "button_1", "button")


@fault("small-parts", "small-parts-of-child", measured=860.0)
def hook_of_a_child_of_one(skirt: Pattern) -> Made:
    return _marked(skirt, 860.0, "hook", "point")


@fault("small-parts", "small-parts-of-child", measured=860.0)
def press_stud_of_a_child_of_one(skirt: Pattern) -> Made:
    return _marked(skirt, 860.0, "eye", "point")


@harmless("small-parts")
def buttons_of_a_child_of_four(skirt: Pattern) -> Made:
    return _marked(skirt, 981.0, "button_1", "button")


@harmless("small-parts")
def place_of_a_pocket_of_a_child_of_one(skirt: Pattern) -> Made:
    return _marked(skirt, 860.0, "pocket_1", "point")


@harmless("small-parts")
def skirt_of_a_child_of_one_without_fastenings(skirt: Pattern) -> Made:
    return Subject(skirt, {"height": 860.0}, is_block=False)
