"""Everything that is sewn of a pattern, as tasks: interfacing, intakes, seams, hems, and what steps add."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace

from notchbook.finish.sewing.basted_layers import sewn_as_one
from notchbook.finish.sewing.bindings import bound_after
from notchbook.finish.sewing.clipped_seams import clipped
from notchbook.finish.sewing.elastic_tasks import elastic_tasks
from notchbook.finish.sewing.facing_tasks import facing_tasks, zip_ends_after
from notchbook.finish.sewing.facings import FacedEdge, faced_edges
from notchbook.finish.sewing.folded_facings import folded_text
from notchbook.finish.sewing.hem_tasks import hem_tasks
from notchbook.finish.sewing.in_one import sewn_in_one
from notchbook.finish.sewing.inner_necks import closed_with_necks
from notchbook.finish.sewing.joints import Gap, Joints
from notchbook.finish.sewing.laid_linings import sewn_with_linings
from notchbook.finish.sewing.leather_orders import in_leather
from notchbook.finish.sewing.pulled_through import PulledThrough, pulled_through
from notchbook.finish.sewing.seam_texts import seam_text
from notchbook.finish.sewing.seam_words import said
from notchbook.finish.sewing.stages import stage_of
from notchbook.finish.sewing.task import Task, key_of
from notchbook.finish.sewing.zips import closed_after_zips, run_on, seams_before_zip, zip_text
from notchbook.pattern import Intake, Pattern, Piece, Seam, title_of
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


def tasks_of(pattern: Pattern) -> tuple[tuple[Task, ...], tuple[Gap, ...]]:
    """All tasks in the order in which the pattern tells them, and the runs that nothing joins."""
    joints = Joints(pattern)
    gaps: list[Gap] = []
    pulled = pulled_through(pattern, joints)
    faced = faced_edges(pattern, joints)
    found: list[Task] = [*_fused(pattern), *_intakes(pattern), *pulled.tasks]
    for seam in pattern.seams.values():
        before, open_runs = joints.before(seam)
        gaps.extend(open_runs)
        found.append(_closed_last(_seam(pattern, seam, before, joints), seam, pulled))
    found.extend(clipped(pattern))
    found.extend(facing_tasks(pattern, faced, pulled))
    found.extend(hem_tasks(pattern, joints))
    found.extend(elastic_tasks(pattern, joints))
    in_one = run_on(pattern, joints)
    found.extend(_operations(pattern, joints, in_one))
    closed = _together(closed_with_necks(pattern, _bound_in_turn(pattern, found)))
    waiting = _facings_in_turn(faced, pulled, sewn_as_one(pattern, sewn_with_linings(pattern, closed)))
    zipped = closed_after_zips(pattern, waiting, in_one)
    return tuple(in_leather(pattern, sewn_in_one(pattern, faced, zipped))), tuple(gaps)


def _facings_in_turn(faced: Sequence[FacedEdge], pulled: PulledThrough, tasks: Sequence[Task]) -> list[Task]:
    """The tasks, ends of facings sewn to a zip after these are understitched, and sides that are closed
    last after that too."""
    later = dict(zip_ends_after(faced, tasks))
    through = {key.rpartition("/")[0] for key in (task.key for task in pulled.tasks)}
    for name, turned in pulled.closed_after.items():
        rules = {key.rpartition("/")[0] for key in turned} & through
        later[key_of(name)] = frozenset(f"{rule}/understitched" for rule in rules)
    return [replace(task, after=task.after | later.get(task.key, frozenset())) for task in tasks]


def _bound_in_turn(pattern: Pattern, tasks: Iterable[Task]) -> list[Task]:
    """The tasks, each binding after those that it meets are folded over."""
    later = bound_after(pattern)
    return [replace(task, after=task.after | later.get(task.key, frozenset())) for task in tasks]


def _operations(pattern: Pattern, joints: Joints, in_one: Mapping[str, str]) -> Iterator[Task]:
    """What steps add, each as they tell it; a zip that runs on into another edge is one."""
    for one in pattern.operations.values():
        needed = (*one.after, *seams_before_zip(pattern, one, joints))
        key = in_one.get(one.name, one.name)
        after = frozenset(in_one.get(name, key_of(name)) for name in needed) - {key}
        text = zip_text(pattern, replace(one, text=folded_text(pattern, one)), in_one)
        yield Task(key, one.stage, text, one.at, after, rank=5)


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
    layers, drawn_in = laid_layers(pattern.operations.values()), _drawn_in(pattern)
    for piece in (piece for name, piece in pattern.pieces.items() if name not in layers):
        for intake in piece.intakes:
            if intake.kind in _INTAKE_ORDERS and intake.edge not in drawn_in and _is_open(piece, intake):
                yield _intake(pattern, piece, intake)
        for dart in piece.inner_darts:
            text = _INTAKE_ORDERS["dart"].format(word=said(dart.name), piece=piece.title.lower())
            yield Task(key_of(dart.name), "darts", text, (dart.name,))


def _drawn_in(pattern: Pattern) -> frozenset[str]:
    """The edges that an elastic draws in: they get no gathering threads."""
    named = (name for elastic in pattern.elastics.values() for name in elastic.edges)
    return frozenset(edge for name in named for edge in (name, *expand(pattern, name)[0]))


def _intake(pattern: Pattern, piece: Piece, intake: Intake) -> Task:
    """The task of an intake; gathers are told by the edge in which they lie."""
    word = _edge_word(intake.mouth) if intake.kind == "gather" and intake.mouth else said(intake.name)
    text = _INTAKE_ORDERS[intake.kind].format(word=word, piece=piece.title.lower())
    if intake.kind != "gather":
        return Task(key_of(intake.name), "darts", text, (intake.name,))
    amount = intake.amount * _halves(pattern, expand(pattern, intake.mouth)[0] if intake.mouth else ())
    return Task(key_of(intake.name), "darts", text, (intake.name,), amount=amount, how="gathered")


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
    is_of_one_side = any(use.side != "both" for use in (*seam.first, *seam.second))
    halves = 1 if is_of_one_side else _halves(pattern, members)
    amount = abs(seam.ease) * halves if how else 0.0
    return Task(key_of(seam.name), stage, seam_text(pattern, (seam,)), at, after, rank, amount, how)


def _halves(pattern: Pattern, edges: Iterable[str]) -> int:
    """In how many halves what is sewn in one go is drawn: 2 where one of these edges meets a fold."""
    around = ((pattern.piece_of(name), name) for name in edges)
    folded = ("fold" in (piece.edge_before(name).kind, piece.edge_after(name).kind) for piece, name in around)
    return 2 if any(folded) else 1


def _closed_last(task: Task, seam: Seam, pulled: PulledThrough) -> Task:
    """The task of a seam, as facings of neck and armhole in one ask: those that close them come after it."""
    waits = {key_of(name) for name, turned in pulled.closed_after.items() if seam.name in turned}
    needs = map(key_of, pulled.closed_after.get(seam.name, ()))
    return replace(task, after=(task.after - waits) | frozenset(needs))


def _edge_word(name: str) -> str:
    """What an edge or a part of it is called: ``shoulder`` of ``bodice.front/shoulder/near``."""
    return key_of(name).split("/")[1].replace("_", " ")
