"""A line carried on at its end, or cut back."""

from notchbook.geometry import Line, Path


def carried_on(path: Path, amount: float) -> Path:
    """The line carried on straight at its end by the amount, mm; cut back by it where negative.

    A straight end goes on as one segment. An amount of 0 changes nothing.
    """
    if amount == 0.0:
        return path
    if amount < 0.0:
        return path.split_at(path.length + amount)[0]
    last = path.segments[-1]
    goal = path.end + path.tangent_at(path.length) * amount
    if isinstance(last, Line):
        return Path((*path.segments[:-1], Line(last.start, goal)))
    return path.joined(Path.line(path.end, goal))
