"""The ledger: after each step every name is accounted for, or it is our fault.

The engine finds what was created, modified and removed; the step declares only splits, merges and
removals. Nothing here knows a garment.
"""

from collections import Counter
from collections.abc import Iterator, Mapping, Set
from dataclasses import dataclass, replace

from notchbook.errors import HouseFault
from notchbook.pattern.names import instance_of, split_side
from notchbook.pattern.pattern import Fate, Group, Pattern, frozen_map
from notchbook.recipe.definition import Change
from notchbook.recipe.recipe import StepRecord

_MAY_BECOME = (("edge", "line"), ("mark", "point"), ("point", "mark"))
"""A fold that is opened is a line of the whole piece, under its old name, as where the two sides differ; the
point of a dart inside the piece is a corner of the outline when a cut opens the dart; the neck pit lies
inside the piece where a lapel is cut on."""


@dataclass(frozen=True, slots=True)
class LedgerEntry:
    """What one step did to the names: each list in a stable order."""

    step: str
    created: tuple[str, ...]
    modified: tuple[str, ...]
    split: tuple[tuple[str, tuple[str, ...]], ...]
    merged: tuple[tuple[str, tuple[str, ...]], ...]
    removed: tuple[tuple[str, str], ...]


def account(before: Pattern, change: Change, record: StepRecord) -> tuple[Pattern, LedgerEntry]:
    """The pattern with its groups and fates brought up to date, and the entry for the ledger.

    Raises HouseFault ``ledger-*`` when a name vanished unsaid, appeared outside the step's own
    names, changed its kind, stands twice, or was declared in a way that is not so.
    """
    after = change.pattern
    old, new = dict(before.index), dict(after.index)
    gone = {name: kind for name, kind in old.items() if name not in new and kind != "group"}
    _require_declared(gone, change, record)
    _require_true(new, change, record)
    created = tuple(name for name in new if name not in old)
    _require_own_names(created, change, record)
    _require_once(after, record)
    for name in old.keys() & new.keys():
        if old[name] != new[name] and (old[name], new[name]) not in _MAY_BECOME:
            raise HouseFault("ledger-kind-changed", step=record.id, name=name)
    groups = dict(after.groups)
    for name, parts in change.splits.items():
        groups[name] = Group(tuple(parts), record.id)
    fates = dict(after.fates)
    for name, heirs in change.merges.items():
        fates[name] = Fate("merged", tuple(heirs), record.id, "joined into another")
    for name, reason in change.removals.items():
        fates[name] = Fate("removed", (), record.id, reason)
    kept = replace(after, groups=frozen_map(groups), fates=frozen_map(fates))
    entry = LedgerEntry(
        step=record.id,
        created=created,
        modified=tuple(_modified(before, kept)),
        split=tuple((name, tuple(parts)) for name, parts in change.splits.items()),
        merged=tuple((name, tuple(heirs)) for name, heirs in change.merges.items()),
        removed=tuple(change.removals.items()),
    )
    return kept, entry


def _require_declared(gone: Mapping[str, str], change: Change, record: StepRecord) -> None:
    declared = change.splits.keys() | change.merges.keys() | change.removals.keys()
    unsaid = sorted(name for name in gone if name not in declared)
    if unsaid:
        raise HouseFault("ledger-name-vanished", step=record.id, names=unsaid)


def _require_true(new: Mapping[str, str], change: Change, record: StepRecord) -> None:
    living = [
        name
        for name in (*change.splits, *change.merges, *change.removals)
        if name in new and new[name] != "group"
    ]
    if living:
        raise HouseFault("ledger-declared-but-living", step=record.id, names=living)
    heirs = [part for parts in (*change.splits.values(), *change.merges.values()) for part in parts]
    known = new.keys() | change.splits.keys() | change.removals.keys()
    missing = [part for part in heirs if part not in known]
    if missing:
        raise HouseFault("ledger-heir-missing", step=record.id, names=missing)


def _require_own_names(created: tuple[str, ...], change: Change, record: StepRecord) -> None:
    parts = {part for parts in change.splits.values() for part in parts}
    below = tuple(f"{split_side(part)[0]}/" for part in parts)
    foreign = [
        name
        for name in created
        if instance_of(name) != record.slug
        and name not in parts
        and not name.startswith(below)
        and not _is_side_of(name, change.removals)
    ]
    if foreign:
        raise HouseFault("ledger-foreign-name", step=record.id, names=foreign)


def _is_side_of(name: str, removals: Mapping[str, str]) -> bool:
    """Whether it is one side of what had one name for both."""
    base, side = split_side(name)
    return side != "both" and base in removals


def _require_once(after: Pattern, record: StepRecord) -> None:
    """A name that stands for two things would bind later steps to either."""
    names = [name for piece in after.pieces.values() for name in piece.names()]
    names += (*after.seams, *after.notches, *after.groups)
    if len(set(names)) < len(names):
        twice = sorted(name for name, times in Counter(names).items() if times > 1)
        raise HouseFault("ledger-name-twice", step=record.id, names=twice)


def _modified(before: Pattern, after: Pattern) -> Iterator[str]:
    """Names that live on but whose shape or data moved."""
    same = {name for name, piece in after.pieces.items() if before.pieces.get(name) is piece}
    old_parts, new_parts = dict(_contents(before, same)), dict(_contents(after, same))
    for name, content in new_parts.items():
        if name in old_parts and old_parts[name] != content:
            yield name


def _contents(pattern: Pattern, without: Set[str]) -> Iterator[tuple[str, object]]:
    """What names stand for; pieces ``without`` which the two patterns are compared are left out."""
    for piece in pattern.pieces.values():
        if piece.name in without:
            continue
        yield piece.name, (piece.title, piece.cut, piece.grain, piece.instructions, piece.side)
        for edge in piece.outline:
            yield edge.name, (edge.path, edge.kind, edge.start, edge.end)
        yield from piece.points.items()
        for intake in piece.intakes:
            yield intake.name, intake
        for line in piece.lines:
            yield line.name, line
        for dart in piece.inner_darts:
            yield dart.name, dart
    yield from pattern.seams.items()
    yield from pattern.notches.items()
