"""What the menus do: each act of the window that is more than one page's own."""

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QStandardPaths, Slot
from PySide6.QtWidgets import QApplication

from journal.desktop.record_acts import RecordActs
from journal.desktop.theme import Choice
from journal.domain.changes import Changes
from journal.domain.errors import JournalError
from journal.domain.progress import Context

if TYPE_CHECKING:
    from journal.domain.checks import CheckReport

_PICTURES = "All files (*)"
#: What rests on photos: it is told again once some are cleared out.
_ON_PHOTOS = frozenset({"photos", "pins", "areas", "work", "metalwork", "pairs", "dossier"})
#: Which page of the help fits which page of the window.
_HELP_OF = {
    "Drawing": "pin",
    "Timeline": "photos",
    "Areas": "areas",
    "Ledger": "receipts",
    "Gaps": "gaps",
    "Dossier": "dossier",
}


class Acts(RecordActs):
    """The acts of the menus, the start page and the bottom strip."""

    # --- journal ---

    @Slot()
    def new_journal(self) -> None:
        """Ask for the car and begin its journal."""
        from journal.desktop.dialogs.new_journal import NewJournalDialog

        dialog = NewJournalDialog(documents(), self._window)
        dialog.exec()
        if dialog.session is not None:
            self._window.adopt(dialog.session)
        dialog.deleteLater()

    @Slot()
    def choose_and_open(self) -> None:
        """Ask for a journal's folder and open it."""
        folder = self._choose_folder("Open the journal in which folder?")
        if folder:
            self.open_folder(folder)

    def open_folder(self, folder: Path) -> bool:
        """Open the journal in a folder; whether that worked."""
        from journal.actions.journals import open_journal

        desk = self._window.desk
        if desk is not None and desk.session.folder == folder:
            return True
        try:
            session = open_journal(folder)
        except JournalError as error:
            self._window.show_message(str(error), "error")
            return False
        self._window.adopt(session)
        return True

    @Slot()
    def make_demo(self) -> None:
        """Make the demo journal in a folder of the person's choice and open it."""
        from journal.actions.demo import make_demo

        parent = self._choose_folder("Where shall the demo journal's folder be made?")
        if parent is None:
            return
        folder = free_folder(parent, "Halden Rook")

        def job(context: Context) -> Path:
            make_demo(folder, context)
            return folder

        self._window.tasks.write(
            "Making the demo journal",
            job,
            owner=self,
            on_done=self.open_folder,
            on_failed=self._tell_failure,
        )

    @Slot()
    def choose_and_add(self) -> None:
        """Ask for photos and add them."""
        from PySide6.QtWidgets import QFileDialog

        pictures = folder_for(QStandardPaths.StandardLocation.PicturesLocation)
        names, _ = QFileDialog.getOpenFileNames(
            self._window, "Add which photos?", str(pictures), _PICTURES
        )
        if names:
            self._window.add_paths([Path(name) for name in names])

    @Slot()
    def choose_folder_and_add(self) -> None:
        """Ask for a folder of photos and add all in it."""
        folder = self._choose_folder("Add the photos of which folder?")
        if folder:
            self._window.add_paths([folder])

    def edit_car(self) -> None:
        """Show what the journal says of the car, to be changed."""
        from journal.desktop.dialogs.car import CarDialog

        if desk := self._window.desk:
            self._show(CarDialog(desk, self._window))

    def edit_milestones(self) -> None:
        """Show the milestones, to be added to and changed."""
        from journal.desktop.dialogs.milestones import MilestonesDialog

        if desk := self._window.desk:
            self._show(MilestonesDialog(desk, self._window))

    def take_drawing_out(self) -> None:
        """Ask what of the drawing goes to which file."""
        from journal.desktop.dialogs.take_out import TakeOutDialog

        if desk := self._window.desk:
            self._show(TakeOutDialog(desk, parent=self._window))

    def bring_svg_in(self) -> None:
        """Ask for an SVG file and bring its panels in."""
        from journal.desktop.dialogs.bring_in import BringInDialog

        if desk := self._window.desk:
            self._show(BringInDialog(desk, self._window))

    def bring_sheet_in(self) -> None:
        """Ask for a spreadsheet or a bank's export and bring it in."""
        from journal.desktop.dialogs.bring_in_sheet import choose_sheet

        if desk := self._window.desk:
            choose_sheet(desk, self._window)

    def export_tables(self) -> None:
        """Write the record as tables into a folder of the person's choice."""
        from journal.actions.exporting import export_tables

        desk = self._window.desk
        folder = self._choose_folder("Write the tables into which folder?") if desk else None
        if desk and folder:
            session = desk.session
            desk.run(
                "Exporting tables",
                lambda _context: export_tables(session, folder),
                lambda made: desk.message.emit(f"{_files(len(made))} are in {folder}.", "done"),
            )

    def check(self) -> None:
        """Check every original and the record, and show what was found."""
        from journal.actions.checking import check

        if desk := self._window.desk:
            folder = desk.session.folder
            desk.run(
                "Checking the journal", lambda context: check(folder, context), self._on_checked
            )

    def back_up(self) -> None:
        """Copy the journal to a folder of the person's choice."""
        from journal.actions.backups import backup

        desk = self._window.desk
        destination = self._choose_folder("Put the backup into which folder?") if desk else None
        if desk and destination:
            session = desk.session
            desk.run(
                "Backing up",
                lambda context: backup(session, destination, context),
                lambda made: desk.message.emit(f"The backup is {made}.", "done"),
            )

    def restore(self) -> None:
        """Make a journal out of a backup and open it."""
        from journal.actions.backups import restore

        backup = self._choose_folder("Which backup?")
        parent = (
            self._choose_folder("Where shall the journal's folder be made?") if backup else None
        )
        if backup is None or parent is None:
            return
        folder = free_folder(parent, backup.name)

        def job(context: Context) -> Path:
            restore(backup, folder, context)
            return folder

        self._window.tasks.write(
            "Restoring",
            job,
            owner=self,
            on_done=self.open_folder,
            on_failed=self._tell_failure,
        )

    def clear_out(self) -> None:
        """Send the originals of removed photos and papers to the system's trash, once confirmed."""
        from journal.actions.photos import clear_out_removed, count_removed_originals

        desk = self._window.desk
        count = desk.ask(count_removed_originals) if desk else None
        if desk is None or count is None:
            return
        if not count:
            desk.message.emit(
                "No original has been removed; there is nothing to clear out.", "info"
            )
            return
        if self._sure_to_clear_out(count):
            session = desk.session
            desk.run(
                "Clearing out removed originals",
                lambda _context: clear_out_removed(session),
                self._on_cleared_out,
            )

    def _on_cleared_out(self, count: int) -> None:
        if desk := self._window.desk:
            desk.changed.emit(Changes(label="", kinds=_ON_PHOTOS))
            desk.message.emit(f"{_files(count)} went to the trash.", "done")

    # --- edit and view ---

    @Slot()
    def undo(self) -> None:
        """Take back the last edit."""
        from journal.actions import history

        if desk := self._window.desk:
            desk.act(history.undo)

    @Slot()
    def redo(self) -> None:
        """Do again what was taken back last."""
        from journal.actions import history

        if desk := self._window.desk:
            desk.act(history.redo)

    def find(self) -> None:
        """Go to the find field."""
        if workspace := self._window.workspace:
            workspace.find_box.setFocus()

    def show_history(self) -> None:
        """List the edits."""
        from journal.desktop.dialogs.history import HistoryDialog

        if desk := self._window.desk:
            self._show(HistoryDialog(desk, self._window))

    def show_page(self, title: str) -> None:
        """Bring a page to the front."""
        if workspace := self._window.workspace:
            workspace.show_page(title)

    def toggle_inspector(self) -> None:
        """Show or hide what is selected."""
        if workspace := self._window.workspace:
            if workspace.inspector_toggle.isEnabled():
                workspace.inspector_toggle.toggle()
            else:
                self._window.show_message("There is nothing selected to show here.", "info")

    def next_part(self) -> None:
        """Take the keyboard to the next part: rail, page, inspector."""
        if workspace := self._window.workspace:
            workspace.focus_next_part()

    def set_theme(self, choice: Choice) -> None:
        """Change the colours, now and for next time."""
        self._window.save_settings(replace(self._window.settings, theme=choice))
        self._window.menus.mark_theme(choice)
        self._window.dress(choice)

    # --- help ---

    def show_help(self, page: str = "") -> None:
        """Open the help at a page, or at what fits the page in front."""
        from journal.desktop.dialogs.help import HelpDialog

        workspace = self._window.workspace
        front = workspace.current_page() if workspace else None
        fitting = _HELP_OF.get(front.title, "start") if front else "start"
        dialog = HelpDialog(page or fitting, self._window)
        dialog.finished.connect(dialog.deleteLater)
        dialog.show()

    def show_about(self) -> None:
        """Say what this program is."""
        self.show_help("about")

    # --- what the acts share ---

    def _choose_folder(self, question: str) -> Path | None:
        from PySide6.QtWidgets import QFileDialog

        chosen = QFileDialog.getExistingDirectory(self._window, question, str(documents()))
        return Path(chosen) if chosen else None

    def _tell_failure(self, error: Exception) -> None:
        if not isinstance(error, JournalError):
            raise error
        self._window.show_message(str(error), "error")

    def _on_checked(self, report: "CheckReport") -> None:
        from journal.desktop.dialogs.checked import CheckedDialog

        self._show(CheckedDialog(report, self._window))

    def _sure_to_clear_out(self, count: int) -> bool:
        from PySide6.QtWidgets import QMessageBox

        asked = QMessageBox(self._window)
        asked.setIcon(QMessageBox.Icon.Warning)
        asked.setWindowTitle(QApplication.applicationDisplayName())
        asked.setText(f"Send {_files(count)} of removed photos and papers to the system's trash?")
        asked.setInformativeText("This can't be undone here; the trash keeps them for a while.")
        go = asked.addButton("&Send to the trash", QMessageBox.ButtonRole.AcceptRole)
        keep = asked.addButton("&Keep them", QMessageBox.ButtonRole.RejectRole)
        asked.setDefaultButton(keep)
        asked.exec()
        return asked.clickedButton() is go


def _files(count: int) -> str:
    return "1 file" if count == 1 else f"{count:,} files"


def documents() -> Path:
    """The person's folder for documents, else the home folder."""
    return folder_for(QStandardPaths.StandardLocation.DocumentsLocation)


def folder_for(kind: QStandardPaths.StandardLocation) -> Path:
    """The person's folder for a kind of thing, else the home folder."""
    found = QStandardPaths.writableLocation(kind)
    folder = Path(found) if found else Path.home()
    return folder if folder.is_dir() else Path.home()


def free_folder(parent: Path, name: str) -> Path:
    """A folder of that name in ``parent`` that isn't there yet, numbered where it is."""
    folder, number = parent / name, 2
    while folder.exists():
        folder, number = parent / f"{name} {number}", number + 1
    return folder
