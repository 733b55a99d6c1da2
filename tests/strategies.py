"""Made-up values that laws are tried on."""

from hypothesis import strategies as st

from journal.domain.shapes import DECIMALS, Contour, Curve, Line, Point, Shape

#: Lengths as the written form keeps them, in millimetres.
written_lengths = st.integers(-1_000_000, 1_000_000).map(
    lambda n: round(n / 10**DECIMALS, DECIMALS)
)

#: Lengths with all the decimals that sums leave behind.
lengths = st.floats(-10_000, 10_000, allow_nan=False)


def points(numbers: st.SearchStrategy[float]) -> st.SearchStrategy[Point]:
    return st.builds(Point, numbers, numbers)


def edges(numbers: st.SearchStrategy[float]) -> st.SearchStrategy[Line | Curve]:
    spot = points(numbers)
    return st.one_of(st.builds(Line, spot), st.builds(Curve, spot, spot, spot))


def contours(numbers: st.SearchStrategy[float]) -> st.SearchStrategy[Contour]:
    runs = st.lists(edges(numbers), min_size=1, max_size=6).map(tuple)
    return st.builds(Contour, points(numbers), runs)


def shapes(numbers: st.SearchStrategy[float] = lengths) -> st.SearchStrategy[Shape]:
    return st.builds(Shape, st.lists(contours(numbers), min_size=1, max_size=4).map(tuple))


#: Shapes that the written form keeps whole.
written_shapes = shapes(written_lengths)
