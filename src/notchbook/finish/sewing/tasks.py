"""Everything that is sewn of a pattern, as tasks: interfacing, intakes, seams, hems, and what steps add."""

from collections.abc import Iterable, Iterator

from notchbook.finish.sewing.elastic_tasks import elastic_tasks
from notchbook.finish.sewing.joints import Gap, Joints, steps
from notchbook.finish.sewing.stages import stage_of
from notchbook.finish.sewing.task import Task
from notchbook.pattern import EdgeUse, Intake, Pattern, Piece, Seam, split_side, spoken, title_of
from notchbook.pattern.names import last_word
from notchbook.pattern.resolve import expand
from notchbook.pattern.seam import TURNED_SEAM
from notchbook.units import TOLERANCES

_INTAKE_ORDERS = {
    "dart": "Sew the {word} of the {piece}",
    "tuck": "Fold and stitch the {word} of the {piece}",
    "pleat": "Lay the {word} of the {piece} and baste it",
    "gather": "Run gathering threads along the {word} of the {piece}",
}
"""What is done with an intake before the seam that crosses it; ease is worked in with the seam itself."""


_HEMMED = "_hemmed"
"""How the operation of a step is called that turns up a hem: ``pocket_hemmed``."""


def key_of(name: str) -> str:
    """The name without its side: left and right are sewn alike, in one line of the order."""
    return split_side(name)[0]


def tasks_of(pattern: Pattern) -> tuple[tuple[Task, ...], tuple[Gap, ...]]:
    """All tasks in the order in which the pattern tells them, and the runs that nothing joins."""
    joints = Joints(pattern)
    gaps: list[Gap] = []
    found: list[Task] = [*_fused(pattern), *_intakes(pattern)]
    for seam in pattern.seams.values():
        before, open_runs = joints.before(seam)
        gaps.extend(open_runs)
        found.append(_seam(pattern, seam, before, joints))
    found.extend(_hems(pattern, joints))
    found.extend(elastic_tasks(pattern, joints))
    for one in pattern.operations.values():
        after = frozenset(key_of(name) for name in one.after)
        found.append(Task(one.name, one.stage, one.text, one.at, after, rank=5))
    return _together(found), tuple(gaps)


def _together(found: Iterable[Task]) -> tuple[Task, ...]:
    """One task for what left and right have under one name."""
    tasks: dict[str, Task] = {}
    for task in found:
        known = tasks.get(task.key)
        if known is not None:
            task = Task(
                key=known.key,
                stage=known.stage,
                text=known.text,
                at=(*known.at, *task.at),
                after=known.after | task.after,
                rank=known.rank,
                amount=max(known.amount, task.amount),
                how=known.how or task.how,
            )
        tasks[task.key] = task
    return tuple(tasks.values())


def _fused(pattern: Pattern) -> Iterator[Task]:
    """All fusing in one line: it is done before anything is sewn."""
    fused = [piece for piece in pattern.pieces.values() if _is_fused(piece)]
    if fused:
        titles = tuple(dict.fromkeys(title_of(piece).lower() for piece in fused))
        yield Task("fusing", "prepare", f"Fuse the {_listed(titles)}", tuple(piece.name for piece in fused))


def _is_fused(piece: Piece) -> bool:
    materials = {told.material for told in piece.instructions}
    return "fusible" in materials and len(materials) > 1


def _intakes(pattern: Pattern) -> Iterator[Task]:
    for piece in pattern.pieces.values():
        for intake in piece.intakes:
            if intake.kind in _INTAKE_ORDERS and _is_open(piece, intake):
                yield _intake(piece, intake)
        for dart in piece.inner_darts:
            text = _INTAKE_ORDERS["dart"].format(word=_word(dart.name), piece=piece.title.lower())
            yield Task(key_of(dart.name), "darts", text, (dart.name,))


def _intake(piece: Piece, intake: Intake) -> Task:
    word = _word(intake.name)
    text = _INTAKE_ORDERS[intake.kind].format(word=word, piece=piece.title.lower())
    amount, how = (intake.amount, "gathered") if intake.kind == "gather" else (0.0, "")
    return Task(key_of(intake.name), "darts", text, (intake.name,), amount=amount, how=how)


def _is_open(piece: Piece, intake: Intake) -> bool:
    if not intake.has_legs:
        return intake.amount > TOLERANCES.sew_length
    mouth = piece.edge(intake.first_leg).path.start, piece.edge(intake.second_leg).path.end
    return mouth[0].distance_to(mouth[1]) > TOLERANCES.sew_length


def _seam(pattern: Pattern, seam: Seam, before: frozenset[str], joints: Joints) -> Task:
    """The task of a seam. One that is turned closes what it faces: all seams that end at it come before."""
    stage, rank = stage_of(pattern, seam)
    members = {edge for use in (*seam.first, *seam.second) for edge in expand(pattern, use.edge)[0]}
    crossed = {
        intake.name
        for intake in pattern.intakes.values()
        if intake.kind in _INTAKE_ORDERS
        and members
        & {edge for name in (intake.mouth, intake.edge) if name for edge in expand(pattern, name)[0]}
    }
    how, is_turned = "", seam.seam_class == TURNED_SEAM
    if abs(seam.ease) > TOLERANCES.seam_walk and not is_turned:  # the turn of the cloth is nothing eased in
        how = "eased in" if seam.gives == "longer" else "stretched on"
    ends = joints.ends_of(seam) - {seam.name} if is_turned else frozenset()
    after = frozenset(key_of(name) for name in before | crossed | ends)
    at = tuple(use.edge for use in (*seam.first, *seam.second))
    amount = abs(seam.ease) if how else 0.0
    return Task(key_of(seam.name), stage, _seam_text(pattern, seam), at, after, rank, amount, how)


def _seam_text(pattern: Pattern, seam: Seam) -> str:
    """``Sew the front to the back: side seam``; a piece sewn to itself is closed."""
    first, second = (_titles(pattern, uses) for uses in (seam.first, seam.second))
    word = _word(seam.name)
    if first != second:
        return f"Sew the {_listed(first)} to the {_listed(second)}: {word}"
    if {use.side for use in seam.first} & {"left", "right"}:
        return f"Sew the {_listed(first)}, left to right: {word}"
    return f"Close the {_listed(first)}: {word}"


def _titles(pattern: Pattern, uses: tuple[EdgeUse, ...]) -> tuple[str, ...]:
    run = steps(pattern, uses)
    return tuple(dict.fromkeys(pattern.piece_of(step.edge.name).title.lower() for step in run))


def _hems(pattern: Pattern, joints: Joints) -> Iterator[Task]:
    """The hem of each piece, after the seams that end at it; an edge that is sewn to another is no hem, and
    one that a step hems by an operation of its own is told by that."""
    sewn = {
        edge
        for seam in pattern.seams.values()
        for use in (*seam.first, *seam.second)
        for edge in expand(pattern, use.edge)[0]
    }
    told = {at for one in pattern.operations.values() if one.name.endswith(_HEMMED) for at in one.at}
    for piece in pattern.pieces.values():
        hems = [edge for edge in piece.outline if edge.kind == "hem" and edge.name not in sewn | told]
        if hems:
            ends = {point for edge in hems for point in (edge.start, edge.end)}
            after = frozenset(key_of(seam) for point in ends for seam in joints.at(point))
            text = f"Turn up the hem of the {piece.title.lower()}"
            yield Task(f"{key_of(piece.name)}/hem_line", "hems", text, tuple(e.name for e in hems), after)


def _word(name: str) -> str:
    return spoken(last_word(key_of(name)))


def _listed(words: tuple[str, ...]) -> str:
    return f"{', '.join(words[:-1])} and {words[-1]}" if len(words) > 1 else "".join(words)
