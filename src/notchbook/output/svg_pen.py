"""The pen that writes SVG, in mm."""

from html import escape

from notchbook.geometry import Line, Path, Point, Transform
from notchbook.output.pen import MM_PER_POINT, LineStyle, Text
from notchbook.output.typeset import text_width

_ANCHORS = {"left": "start", "center": "middle", "right": "end"}
_FAMILY = "'Atkinson Hyperlegible Next', 'Noto Sans', sans-serif"


class SvgPen:
    """Collects SVG elements. SVG's y runs down, so each point is written as (x, height - y), already
    moved: what reads the file needs no transforms. Numbers have four decimals (0.1 µm)."""

    def __init__(self, height: float) -> None:
        self._height = height
        self._motions = [Transform.identity()]
        self._names: set[str] = set()
        self.elements: list[str] = []

    def stroke(self, path: Path, style: LineStyle, name: str = "") -> None:
        """A path element; ``name`` becomes its id (the first time it is used)."""
        weight = _number(style.weight * MM_PER_POINT)
        dash = f' stroke-dasharray="{" ".join(_number(d) for d in style.dash)}"' if style.dash else ""
        self.elements.append(
            f'<path{self._id(name)} d="{self._data(path)}" fill="none" stroke="{_gray(style.gray)}" '
            f'stroke-width="{weight}"{dash}/>'
        )

    def fill(self, path: Path, gray: float) -> None:
        """A filled path element."""
        self.elements.append(f'<path d="{self._data(path)}" fill="{_gray(gray)}"/>')

    def write(self, text: Text) -> None:
        """A text element, its size in mm. The width is given too, so that words keep to the room found for
        them where the reader has another font."""
        motion = self._motions[-1]
        place = motion.apply(text.position)
        along = motion.apply(text.position + Point(1.0, 0.0).rotated(text.degrees)) - place
        x, y = _number(place.x), _number(self._height - place.y)
        turn = -along.direction()
        turned = f' transform="rotate({_number(turn)} {x} {y})"' if abs(turn) > 1e-9 else ""
        halo = ' stroke="#fff" stroke-width="1" paint-order="stroke"' if text.halo else ""
        weight = ' font-weight="700"' if text.bold else ""
        width = _number(text_width(text.words, text.size, text.bold))
        self.elements.append(
            f'<text x="{x}" y="{y}"{turned} font-family="{_FAMILY}" '
            f'font-size="{_number(text.size * MM_PER_POINT)}"{weight} text-anchor="{_ANCHORS[text.align]}" '
            f'textLength="{width}" lengthAdjust="spacingAndGlyphs" '
            f'fill="{_gray(text.gray)}"{halo}>{escape(text.words)}</text>'
        )

    def begin_group(self, name: str, motion: Transform) -> None:
        """A group element with the name as id."""
        self._motions.append(motion.then(self._motions[-1]))
        self.elements.append(f"<g{self._id(name)}>")

    def end_group(self) -> None:
        """The end of the group."""
        self._motions.pop()
        self.elements.append("</g>")

    def document(self, width: float, title: str, description: str) -> str:
        """The whole file: one user unit is one mm."""
        size = f'width="{_number(width)}mm" height="{_number(self._height)}mm"'
        box = f'viewBox="0 0 {_number(width)} {_number(self._height)}"'
        body = "\n".join(self.elements)
        return (
            '<?xml version="1.0" encoding="UTF-8"?>\n'
            f'<svg xmlns="http://www.w3.org/2000/svg" {size} {box}>\n'
            f"<title>{escape(title)}</title>\n<desc>{escape(description)}</desc>\n{body}\n</svg>\n"
        )

    def _id(self, name: str) -> str:
        if not name or name in self._names:
            return ""
        self._names.add(name)
        return f' id="{escape(name, quote=True)}"'

    def _data(self, path: Path) -> str:
        def at(point: Point) -> str:
            moved = self._motions[-1].apply(point)
            return f"{_number(moved.x)} {_number(self._height - moved.y)}"

        parts = [f"M {at(path.start)}"]
        for segment in path.segments:
            if isinstance(segment, Line):
                parts.append(f"L {at(segment.end)}")
            else:
                parts.append(f"C {at(segment.start_handle)} {at(segment.end_handle)} {at(segment.end)}")
        if path.is_closed:
            parts.append("Z")
        return " ".join(parts)


def _number(value: float) -> str:
    text = f"{value:.4f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


def _gray(gray: float) -> str:
    level = round(255 * gray)
    return f"#{level:02x}{level:02x}{level:02x}"
