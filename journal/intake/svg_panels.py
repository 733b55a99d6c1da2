"""Gathering the figures of a file to panels: names told apart, unsound outlines left out."""

from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from journal.domain.drawing import Decor, Drawing, Panel, PanelShape, Side
from journal.domain.errors import JournalError
from journal.domain.ids import PanelId, ViewId
from journal.domain.shapes import Shape
from journal.intake.svg_names import Figure

_Key = tuple[str, Side]


@dataclass(slots=True)
class Gathering:
    """The panels found so far.

    Attributes:
        views: a drawing with the views that the panels are on.
        left_out: what isn't used or only in part, and why.
    """

    views: Drawing
    left_out: list[tuple[str, str]] = field(default_factory=list)
    _panels: dict[_Key, Figure] = field(default_factory=dict)
    _shapes: dict[tuple[_Key, ViewId], Shape] = field(default_factory=dict)
    _unnamed: int = 0

    def leave_out(self, figure: Figure, reason: str) -> None:
        """Note what isn't used."""
        self.left_out.append((figure.name or figure.tag, reason))

    def add(self, figure: Figure, view_id: ViewId, shape: Shape, *, open_lines: int = 0) -> None:
        """A figure's closed outlines as a panel on a view, unless they are unsound."""
        from journal.domain.shaping.placed import check_shape

        if not shape.contours:
            self.leave_out(figure, "it isn't closed")
            return
        try:
            check_shape(self.views, view_id, shape, figure.name or f"A {figure.tag}")
        except JournalError as error:
            self.leave_out(figure, str(error))
            return
        if open_lines:
            self.leave_out(figure, f"lines of it that aren't closed ({open_lines}) were left out")
        if figure.clipped:
            self.leave_out(figure, "its clip or mask isn't used: it is taken whole")
        name = self._free_name(figure, view_id)
        key = name.casefold(), figure.side
        self._panels.setdefault(key, replace(figure, name=name))
        self._shapes[key, view_id] = shape

    def add_undrawn(self, figure: Figure) -> None:
        """A panel of ours that is on no view."""
        if figure.name:
            self._panels.setdefault((figure.name.casefold(), figure.side), figure)

    def _free_name(self, figure: Figure, view_id: ViewId) -> str:
        """The figure's name, numbered where the view has a panel of that name already."""
        from journal.domain.shaping.making import LONGEST_NAME

        plain = "".join(c for c in figure.name if c.isprintable())[: LONGEST_NAME - 6].strip()
        if not plain:
            self._unnamed += 1
            plain = f"Panel {self._unnamed}"
        name, number = plain, 2
        while ((name.casefold(), figure.side), view_id) in self._shapes:
            name, number = f"{plain} {number}", number + 1
        return name

    def finish(self, decor: tuple[Decor, ...]) -> Drawing:
        """The drawing of all that was gathered; panels of ours keep their numbers."""
        numbers = self._numbers()
        panels = [
            Panel(numbers[key], figure.name, figure.side, figure.system)
            for key, figure in self._panels.items()
        ]
        panels.sort(key=lambda panel: panel.id)
        return Drawing(self.views.views, tuple(panels), tuple(self._placed(numbers)), decor)

    def _numbers(self) -> dict[_Key, PanelId]:
        said = [figure.number for figure in self._panels.values()]
        if not all(said) or len(set(said)) < len(said):
            said = list(range(1, len(said) + 1))
        return {key: PanelId(number) for key, number in zip(self._panels, said, strict=True)}

    def _placed(self, numbers: dict[_Key, PanelId]) -> Iterator[PanelShape]:
        orders: dict[ViewId, int] = {}
        for (key, view_id), shape in self._shapes.items():
            order = orders.get(view_id, 0)
            orders[view_id] = order + 1
            yield PanelShape(numbers[key], view_id, shape, order)
