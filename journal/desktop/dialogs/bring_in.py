"""Bringing an SVG file into the drawing: onto which view, and how long its units are."""

from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QComboBox, QDialog, QDialogButtonBox, QFileDialog, QLineEdit, QWidget

from journal.actions import drawings
from journal.actions.svg import BroughtIn, bring_in_svg
from journal.desktop.desk import Desk
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.widgets.parts import PlainList, button, column, label, row
from journal.domain.errors import JournalError


class BringInDialog(FormDialog):
    """Asks for the file; says at the field why one is refused, and lists what wasn't used."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__("Bring an SVG file in", "&Bring it in", parent)
        self._desk = desk
        self.file = QLineEdit()
        self.view = QComboBox()
        self.scale = QLineEdit()
        choose = button("C&hoose\N{HORIZONTAL ELLIPSIS}", self._choose, icon="folder")
        holder = QWidget()
        holder.setLayout(row(self.file, choose))
        holder.setFocusProxy(self.file)
        self.file.setAccessibleName("File")
        self.view.addItem("A view of its own", None)
        for view in desk.ask(drawings.views) or ():
            self.view.addItem(f"Onto {view.name}", view.id)
        self.scale.setPlaceholderText("as the file says")
        self.add_row(
            "&File", holder, "Every closed shape becomes a panel named by its title or id."
        )
        self.add_row("&Where", self.view)
        self.add_row("&Millimetres a unit", self.scale, "Needed where the file is in pixels.")

    def submit(self) -> bool:
        """Bring the file in; whether that worked."""
        name = self.file.text().strip()
        if not name:
            self.file.setFocus()
            raise JournalError("Choose the SVG file.")
        report = bring_in_svg(
            self._desk.session, Path(name).expanduser(), self.view.currentData(), self._mm()
        )
        self._desk.announce(report)
        if report.not_used or not report.scaled:
            open_dialog(BroughtInDialog(report, self.parentWidget()))
        return True

    def _mm(self) -> float | None:
        text = self.scale.text().strip().replace(",", ".")
        if not text:
            return None
        try:
            return float(text)
        except ValueError:
            self.scale.setFocus()
            raise JournalError(f"“{text}” is no number of millimetres.") from None

    def _choose(self) -> None:
        name, _ = QFileDialog.getOpenFileName(self, "Which file?", "", "SVG (*.svg);;All files (*)")
        if name:
            self.file.setText(name)


class BroughtInDialog(QDialog):
    """What of a file became no panel, and why."""

    def __init__(self, report: BroughtIn, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("Brought in")
        self.setMinimumSize(520, 320)
        count = "1 panel is" if report.panels == 1 else f"{report.panels:,} panels are"
        words = [f"{count} on {', '.join(report.views)}."]
        if not report.scaled:
            words.append(
                "The file doesn't say how long its units are: each was taken for a millimetre. "
                "If that is wrong, undo, and say how many millimetres a unit is."
            )
        said = label(" ".join(words))
        self.list = PlainList("What could not be used")
        for one in report.not_used:
            self.list.addItem(f"{one.what}: {one.reason}")
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        buttons.rejected.connect(self.reject)
        self.list.setVisible(bool(report.not_used))
        heading = label("Not used", "subheading")
        heading.setVisible(bool(report.not_used))
        self.setLayout(column(said, heading, self.list, None, buttons, margin=16))
        said.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
