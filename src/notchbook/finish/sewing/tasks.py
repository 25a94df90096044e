"""Everything that is sewn of a pattern, as tasks: interfacing, intakes, seams, hems, and what steps add."""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from notchbook.finish.sewing.bindings import bound_after
from notchbook.finish.sewing.elastic_tasks import elastic_tasks
from notchbook.finish.sewing.hem_tasks import hem_tasks
from notchbook.finish.sewing.inner_necks import closed_with_necks
from notchbook.finish.sewing.joints import Gap, Joints, steps
from notchbook.finish.sewing.pulled_through import PulledThrough, pulled_through
from notchbook.finish.sewing.stages import stage_of
from notchbook.finish.sewing.task import Task, key_of
from notchbook.finish.sewing.zips import run_on, seams_before_zip, zip_in
from notchbook.pattern import EdgeUse, Intake, Pattern, Piece, Seam, spoken, title_of
from notchbook.pattern.names import last_word
from notchbook.pattern.operation import laid_layers, listed
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


_DART = "dart"

_BOUND = "BS"
"""How the classes of bound seams begin (ASTM D6193)."""


def tasks_of(pattern: Pattern) -> tuple[tuple[Task, ...], tuple[Gap, ...]]:
    """All tasks in the order in which the pattern tells them, and the runs that nothing joins."""
    joints = Joints(pattern)
    gaps: list[Gap] = []
    pulled = pulled_through(pattern, joints)
    found: list[Task] = [*_fused(pattern), *_intakes(pattern), *pulled.tasks]
    for seam in pattern.seams.values():
        before, open_runs = joints.before(seam)
        gaps.extend(open_runs)
        found.append(_closed_last(_seam(pattern, seam, before, joints), seam, pulled))
    found.extend(hem_tasks(pattern, joints))
    found.extend(elastic_tasks(pattern, joints))
    found.extend(_operations(pattern, joints))
    return _together(closed_with_necks(pattern, _bound_in_turn(pattern, found))), tuple(gaps)


def _bound_in_turn(pattern: Pattern, tasks: Iterable[Task]) -> list[Task]:
    """The tasks, each binding after those that it meets are folded over."""
    later = bound_after(pattern)
    return [replace(task, after=task.after | later.get(task.key, frozenset())) for task in tasks]


def _operations(pattern: Pattern, joints: Joints) -> Iterator[Task]:
    """What steps add, each as they tell it; a zip that runs on into another edge is one."""
    in_one = run_on(pattern, joints)
    for one in pattern.operations.values():
        needed = (*one.after, *seams_before_zip(pattern, one, joints))
        key = in_one.get(one.name, one.name)
        after = frozenset(in_one.get(name, key_of(name)) for name in needed) - {key}
        yield Task(key, one.stage, one.text, one.at, after, rank=5)


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
        yield Task("fusing", "prepare", f"Fuse the {listed(titles)}", tuple(piece.name for piece in fused))


def _is_fused(piece: Piece) -> bool:
    materials = {told.material for told in piece.instructions}
    return "fusible" in materials and len(materials) > 1


def _intakes(pattern: Pattern) -> Iterator[Task]:
    layers = laid_layers(pattern.operations.values())
    for piece in (piece for name, piece in pattern.pieces.items() if name not in layers):
        for intake in piece.intakes:
            if intake.kind in _INTAKE_ORDERS and _is_open(piece, intake):
                yield _intake(piece, intake)
        for dart in piece.inner_darts:
            text = _INTAKE_ORDERS["dart"].format(word=_word(dart.name), piece=piece.title.lower())
            yield Task(key_of(dart.name), "darts", text, (dart.name,))


def _intake(piece: Piece, intake: Intake) -> Task:
    """The task of an intake; gathers are told by the edge in which they lie."""
    word = _edge_word(intake.mouth) if intake.kind == "gather" and intake.mouth else _word(intake.name)
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


def _closed_last(task: Task, seam: Seam, pulled: PulledThrough) -> Task:
    """The task of a seam, as facings of neck and armhole in one ask: those that close them come after it."""
    waits = {key_of(name) for name, turned in pulled.closed_after.items() if seam.name in turned}
    needs = map(key_of, pulled.closed_after.get(seam.name, ()))
    return replace(task, after=(task.after - waits) | frozenset(needs))


def _seam_text(pattern: Pattern, seam: Seam) -> str:
    """``Sew the front to the back: side seam``; a piece sewn to itself is closed. A zip leaves a part of the
    seam open, or all of it."""
    first, second = (_titles(pattern, uses) for uses in (seam.first, seam.second))
    word, zipped = _word(seam.name), zip_in(pattern, seam)
    if zipped == "whole":
        return f"Leave the {listed(tuple(dict.fromkeys((*first, *second))))} open for the zip: {word}"
    where = f", {zipped} the zip notch" if zipped else ""
    if _is_folded_band(pattern, seam):
        line = f"Fold the {listed(first)} along its line, wrong sides together, and sew it"
        return f"{line} to the {listed(second)}: {word}"
    if first != second:
        return f"Sew the {listed(first)} to the {listed(second)}{where}: {word}"
    if {use.side for use in seam.first} & {"left", "right"} and not _is_whole(pattern, seam):
        return f"Sew the {listed(first)}, left to right{where}: {word}"
    return f"Close the {listed(first)}{where}: {word}"


def _is_folded_band(pattern: Pattern, seam: Seam) -> bool:
    """Whether the seam stretches a band on that is folded along its line, both its edges in the seam."""
    bands = {pattern.carriers[step.edge.name] for step in steps(pattern, seam.first)}
    lines = [{line.kind for line in pattern.pieces[name].lines} for name in bands]
    is_plain = seam.gives == "shorter" and not seam.seam_class.startswith(_BOUND)
    return is_plain and bool(lines) and all("fold_line" in kinds for kinds in lines)


def _is_whole(pattern: Pattern, seam: Seam) -> bool:
    """Whether the seam closes a piece that is cut whole, as the ends of a band."""
    uses = steps(pattern, (*seam.first, *seam.second))
    return bool(uses) and all(pattern.piece_of(step.edge.name).cut == "fold" for step in uses)


def _titles(pattern: Pattern, uses: tuple[EdgeUse, ...]) -> tuple[str, ...]:
    run = steps(pattern, uses)
    return tuple(dict.fromkeys(pattern.piece_of(step.edge.name).title.lower() for step in run))


def _edge_word(name: str) -> str:
    """What an edge or a part of it is called: ``shoulder`` of ``bodice.front/shoulder/near``."""
    return key_of(name).split("/")[1].replace("_", " ")


def _word(name: str) -> str:
    """As it is said: ``waist dart``, and of two the ``center waist dart``."""
    words = spoken(last_word(key_of(name)))
    kind, found, which = words.partition(f" {_DART} ")
    return f"{which} {kind} {_DART}" if found and which.isalpha() else words
