"""Taking the drawing out to a file, or the years it went through."""

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from PySide6.QtCore import QStandardPaths, Slot
from PySide6.QtWidgets import QComboBox, QFileDialog, QWidget

from journal.actions import cars, drawings
from journal.desktop.desk import Desk
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.widgets.when_edit import WhenEdit
from journal.domain.progress import Context
from journal.domain.tints import TintBy
from journal.domain.when import When


@dataclass(frozen=True, slots=True)
class _Kind:
    """A kind of file: what it is called, its ending, and whether it is of the years."""

    words: str
    suffix: str
    years: bool = False


_KINDS = (
    _Kind("Drawing as SVG, to change elsewhere", ".svg"),
    _Kind("Drawing as a picture (PNG)", ".png"),
    _Kind("Drawing as a page (PDF)", ".pdf"),
    _Kind("The years as a moving picture (GIF)", ".gif", years=True),
    _Kind("The years as a moving picture (WEBP)", ".webp", years=True),
    _Kind("Sheet of year-ends (PDF)", ".pdf", years=True),
    _Kind("Sheet of year-ends (PNG)", ".png", years=True),
)
_YEARS = 3


class TakeOutDialog(FormDialog):
    """What is taken out, which view, and how it stands there; then asks for the file.

    Attributes:
        choose: asks for the file, given the file proposed; None for none.
    """

    def __init__(
        self,
        desk: Desk,
        when: When | None = None,
        by: TintBy | None = None,
        parent: QWidget | None = None,
        *,
        years: bool = False,
    ) -> None:
        super().__init__("Take the drawing out", "&Choose a file\N{HORIZONTAL ELLIPSIS}", parent)
        self.choose: Callable[[Path], Path | None] = self._ask_file
        self._desk = desk
        self.kind, self.view, self.look = QComboBox(), QComboBox(), QComboBox()
        self.when = WhenEdit(optional=True)
        self.when.edit.setPlaceholderText("empty: as it stands today")
        self._fill(when, by)
        self.add_row("&What", self.kind)
        self.add_row("&View", self.view)
        self.add_row("&Panels show", self.look)
        self.add_row("As it &stood", self.when)
        self.kind.currentIndexChanged.connect(self._on_kind)
        self.look.currentIndexChanged.connect(self._on_kind)
        self.kind.setCurrentIndex(_YEARS if years else 0)
        self._on_kind()

    def _fill(self, when: When | None, by: TintBy | None) -> None:
        for kind in _KINDS:
            self.kind.addItem(kind.words, kind)
        self.view.addItem("All views on one sheet", None)
        for view in self._desk.ask(drawings.views) or ():
            self.view.addItem(view.name, view.id)
        self.look.addItem("The stages of the repair areas", "stages")
        self.look.addItem("Nothing: outlines alone", "plain")
        for one in TintBy:
            self.look.addItem(one.value[:1].upper() + one.value[1:], one.value)
        if by is not None:
            self.look.setCurrentIndex(self.look.findData(by.value))
        if when is not None:
            self.when.set_when(when)

    @Slot()
    def _on_kind(self) -> None:
        years = self._kind().years
        plain = self.look.currentData() == "plain"
        self.form.setRowVisible(self.look, not years)
        self.form.setRowVisible(self.when, not years and not plain)

    def _kind(self) -> _Kind:
        kind: _Kind = self.kind.currentData()
        return kind

    def submit(self) -> bool:
        """Ask for the file and begin; whether one was chosen."""
        job_of, label = self._job()
        out = self.choose(self._proposed())
        if out is None:
            return False
        if out.suffix.lower() != self._kind().suffix:
            out = out.with_name(out.name + self._kind().suffix)
        desk = self._desk

        def done(_result: object) -> None:
            desk.message.emit(f"The drawing is in {out}.", "done")

        desk.run(label, job_of(out), done)
        return True

    def _job(self) -> tuple[Callable[[Path], Callable[[Context], object]], str]:
        session, view = self._desk.session, self.view.currentData()
        if self._kind().years:
            from journal.actions.export_years import export_years

            return (
                lambda out: lambda context: export_years(session, out, view, context=context),
                "Taking the years out",
            )
        from journal.actions.export_drawing import export_drawing

        look = self.look.currentData()
        plain, by = look == "plain", TintBy(look) if look in list(TintBy) else None
        on = None if plain else self.when.value()
        return (
            lambda out: (
                lambda context: export_drawing(
                    session, out, view, on=on, plain=plain, by=by, context=context
                )
            ),
            "Taking the drawing out",
        )

    def _proposed(self) -> Path:
        car = self._desk.ask(cars.car)
        found = QStandardPaths.writableLocation(QStandardPaths.StandardLocation.DocumentsLocation)
        folder = Path(found) if found and Path(found).is_dir() else Path.home()
        title = car.title if car else ""
        safe = "".join(sign for sign in title if sign.isalnum() or sign in " -_").strip()
        what = "years" if self._kind().years else "drawing"
        return folder / f"{safe or 'Car'} {what}{self._kind().suffix}"

    def _ask_file(self, proposed: Path) -> Path | None:
        kind = self._kind()
        name, _ = QFileDialog.getSaveFileName(
            self, "Save as", str(proposed), f"{kind.suffix[1:].upper()} (*{kind.suffix})"
        )
        return Path(name) if name else None
