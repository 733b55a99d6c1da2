"""Made-up drawings whose neighbours share their edges, straight and curved, as a car's do."""

from hypothesis import strategies as st

from journal.domain.drawing import Drawing, Panel, PanelShape, Side, System, View
from journal.domain.ids import PanelId, ViewId
from journal.domain.shapes import Contour, Curve, Line, Point, Shape, polygon

VIEW = ViewId(1)

#: Width and height of a patch of the quilt, and the paper round it.
CELL, MARGIN = 200.0, 100.0

Edge = tuple[Point, ...]


def drawing_of(*shapes: Shape, width: float = 1000, height: float = 800) -> Drawing:
    """Panels named A, B, C … on one view."""
    panels = tuple(
        Panel(PanelId(n + 1), chr(65 + n), Side.LEFT, System.OUTER) for n in range(len(shapes))
    )
    placed = tuple(
        PanelShape(panel.id, VIEW, shape, n)
        for n, (panel, shape) in enumerate(zip(panels, shapes, strict=True))
    )
    return Drawing((View(VIEW, "Left side", width, height),), panels, placed)


def two_squares() -> Drawing:
    """A and B, 100 mm wide, with one edge in common at x = 200."""
    a = polygon([(100, 100), (200, 100), (200, 200), (100, 200)])
    b = polygon([(200, 100), (300, 100), (300, 200), (200, 200)])
    return drawing_of(a, b)


@st.composite
def quilts(draw: st.DrawFn, columns: int = 3, rows: int = 2) -> Drawing:
    """Patches in rows, corners out of place and edges bent, each edge the same for both sides."""
    off = st.integers(-4000, 4000).map(lambda n: n / 100)
    spots = {
        (c, r): Point(
            round(MARGIN + c * CELL + draw(off), 2), round(MARGIN + r * CELL + draw(off), 2)
        )
        for c in range(columns + 1)
        for r in range(rows + 1)
    }
    edges: dict[tuple[int, int, str], Edge] = {}
    for c in range(columns + 1):
        for r in range(rows + 1):
            if c < columns:
                edges[c, r, "across"] = _edge(spots[c, r], spots[c + 1, r], draw(off), draw(off))
            if r < rows:
                edges[c, r, "down"] = _edge(spots[c, r], spots[c, r + 1], draw(off), draw(off))
    shapes = [_patch(edges, c, r) for r in range(rows) for c in range(columns)]
    return drawing_of(*shapes)


def _edge(a: Point, b: Point, bend1: float, bend2: float) -> Edge:
    """Straight where the first bend is slight, else bent to the side by both."""
    if abs(bend1) < 10:
        return a, b
    dx, dy = (b.x - a.x) / 3, (b.y - a.y) / 3
    size = (dx * dx + dy * dy) ** 0.5 or 1
    nx, ny = -dy / size, dx / size
    one = Point(round(a.x + dx + nx * bend1, 2), round(a.y + dy + ny * bend1, 2))
    two = Point(round(b.x - dx + nx * bend2, 2), round(b.y - dy + ny * bend2, 2))
    return a, one, two, b


def _patch(edges: dict[tuple[int, int, str], Edge], c: int, r: int) -> Shape:
    top, right = edges[c, r, "across"], edges[c + 1, r, "down"]
    low, left = edges[c, r + 1, "across"][::-1], edges[c, r, "down"][::-1]
    ring = [Line(e[1]) if len(e) == 2 else Curve(e[1], e[2], e[3]) for e in (top, right, low, left)]
    return Shape((Contour(top[0], tuple(ring)),))
