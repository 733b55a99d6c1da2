"""Making a bundle: for whom, with which originals, in which form, signed or not, and where."""

from collections.abc import Callable
from functools import partial
from pathlib import Path

from PySide6.QtCore import QStandardPaths, Slot
from PySide6.QtWidgets import QCheckBox, QComboBox, QFileDialog, QWidget

from journal.actions import signing
from journal.actions.bundles import free_place, make_bundle
from journal.actions.dossier_cuts import choices_of
from journal.desktop.desk import Desk, PhotosSelected
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.widgets.parts import label
from journal.domain.bundles import BundleChoice, BundleForm, BundleReport, OriginalsIn
from journal.domain.cuts import Choices, Cut
from journal.domain.errors import JournalError

_FORMS = {
    BundleForm.FOLDER: "A folder",
    BundleForm.ZIP: "A ZIP file, to be sent",
    BundleForm.TAR: "A tar file",
}
_ORIGINALS = {
    OriginalsIn.ALL: "All photos and papers",
    OriginalsIn.USED: "Those that the dossier uses",
    OriginalsIn.NONE: "None",
}
_SELECTED = "selected"
_WORDS = (
    "Dossier, record and originals in one package, with lists by which a stranger can find out "
    "with ordinary tools whether anything was changed since."
)
_TOGETHER = "Originals hold whatever the camera wrote in them, places and serial numbers too."


class BundleDialog(FormDialog):
    """What goes into a bundle; then asks where it is to be.

    Attributes:
        choose: asks for the place, given the one proposed and the form; None for none.
        made: called with the report when the bundle is there.
    """

    def __init__(
        self, desk: Desk, parent: QWidget | None = None, choices: Choices | None = None
    ) -> None:
        super().__init__("Make the bundle", "&Choose where\N{HORIZONTAL ELLIPSIS}", parent)
        self.choose: Callable[[Path, BundleForm], Path | None] = self._ask_place
        # The dialog is gone by the time the bundle is made: what shows it must not need it.
        self.made: Callable[[BundleReport], None] = partial(_show_report, desk, parent)
        self._desk = desk
        self._given = choices
        on_desk = desk.selection
        self._selected = on_desk.ids if isinstance(on_desk, PhotosSelected) else ()
        self.cut, self.originals, self.form_of = QComboBox(), QComboBox(), QComboBox()
        self.history = QCheckBox("Every &change ever made, so that the record can be followed")
        self.sign = QCheckBox("&Sign it with your key")
        self.held_back, self.key = label("", "muted"), label(_key_words(), "muted")
        self._fill()
        self.outer.insertWidget(0, label(_WORDS, "muted"))
        self.add_row("&Reader", self.cut)
        self.form.addRow("", self.held_back)
        self.add_row("&Originals", self.originals, _TOGETHER)
        self.add_row("History", self.history)
        self.add_row("&As", self.form_of)
        self.add_row("Signature", self.sign)
        self.form.addRow("", self.key)
        self.cut.currentIndexChanged.connect(self._on_cut)
        self._on_cut()

    def _fill(self) -> None:
        for cut in Cut:
            self.cut.addItem(cut.words, cut)
        wanted = self._given.cut if self._given else Cut.OWN
        self.cut.setCurrentIndex(self.cut.findData(wanted))
        for which, words in _ORIGINALS.items():
            self.originals.addItem(words, which)
        if self._selected:
            count = len(self._selected)
            words = "The photo selected" if count == 1 else f"The {count:,} photos selected"
            self.originals.insertItem(1, words, _SELECTED)
        for form, words in _FORMS.items():
            self.form_of.addItem(words, form)
        self.history.setChecked(True)

    @Slot()
    def _on_cut(self) -> None:
        """What withholds anything leaves no room for what would show it."""
        choices = self._choices()
        withheld = sorted(kind.value for kind in choices.withheld) if choices else []
        open_to_all = not withheld
        if open_to_all != self.history.isEnabled():
            which = OriginalsIn.ALL if open_to_all else OriginalsIn.NONE
            self.originals.setCurrentIndex(self.originals.findData(which))
            self.history.setChecked(open_to_all)
        self.originals.setEnabled(open_to_all)
        self.history.setEnabled(open_to_all)
        self.held_back.setText(
            ""
            if open_to_all
            else f"Kept back: {', '.join(withheld)}. Originals and history are left out, since "
            "they would show it; their SHA-256 are listed."
        )
        self.held_back.setVisible(bool(self.held_back.text()))

    def _choices(self) -> Choices | None:
        cut = Cut(self.cut.currentData())
        if self._given is not None and self._given.cut is cut:
            return self._given
        return self._desk.ask(choices_of, cut)

    def submit(self) -> bool:
        """Ask for the place and begin; whether one was chosen."""
        choices, title = self._choices(), self._title()
        if choices is None or title is None:
            return False
        form = BundleForm(self.form_of.currentData())
        out = self.choose(free_place(_documents(), title, form), form)
        if out is None:
            return False
        if form is not BundleForm.FOLDER and out.suffix.lower() != form.suffix:
            out = out.with_name(out.name + form.suffix)
        which = self.originals.currentData()
        only = which == _SELECTED
        choice = BundleChoice(
            dossier=choices,
            form=form,
            originals=OriginalsIn.ALL if only else OriginalsIn(which),
            only=frozenset(self._selected) if only else None,
            history=self.history.isChecked(),
            sign=self.sign.isChecked(),
        )
        session, made = self._desk.session, self.made
        self._desk.run(
            "Making the bundle",
            lambda context: make_bundle(session, out, choice, context),
            made,
        )
        return True

    def _title(self) -> str | None:
        """What the car is called in the name of a file for others; None where it failed."""
        # What redacts a whole record is wanted for this act alone.
        from journal.actions.privacy import title_for_others

        choices = self._choices()
        return self._desk.ask(title_for_others, choices.withheld) if choices else None

    def _ask_place(self, proposed: Path, form: BundleForm) -> Path | None:
        if form is BundleForm.FOLDER:
            folder = QFileDialog.getExistingDirectory(
                self, "Put the bundle's folder into which folder?", str(proposed.parent)
            )
            title = self._title()
            return free_place(Path(folder), title, form) if folder and title is not None else None
        kind = f"{form.value.upper()} (*{form.suffix})"
        name, _ = QFileDialog.getSaveFileName(self, "Save the bundle as", str(proposed), kind)
        return Path(name) if name else None


def _show_report(desk: Desk, parent: QWidget | None, report: BundleReport) -> None:
    from journal.desktop.dialogs.bundle_made import BundleMadeDialog

    dialog = BundleMadeDialog(report, desk, parent)
    dialog.finished.connect(dialog.deleteLater)
    dialog.open()


def _key_words() -> str:
    try:
        found = signing.fingerprint()
    except JournalError as error:
        return str(error)
    if not found:
        return "A key is made the first time, and kept on this computer."
    return f"Your key's fingerprint, to be told to the reader by another way:\n{found}"


def _documents() -> Path:
    found = QStandardPaths.writableLocation(QStandardPaths.StandardLocation.DocumentsLocation)
    return Path(found) if found and Path(found).is_dir() else Path.home()
