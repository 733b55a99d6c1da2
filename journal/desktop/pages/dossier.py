"""The page of the dossier: for whom, with what, how it will look, and making it."""

from dataclasses import replace
from functools import partial
from typing import Any

from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QApplication, QLineEdit, QSplitter, QWidget

from journal.actions import areas as area_actions
from journal.actions.dossier_cuts import choices_of, choose, choose_as_usual
from journal.desktop.desk import Desk
from journal.desktop.pages import Page
from journal.desktop.pages.dossier_choices import ChoicesPanel
from journal.desktop.pages.dossier_cut import CutBar
from journal.desktop.pages.dossier_made import MadeCard, choose_file, proposed_file
from journal.desktop.tasks import Task
from journal.desktop.widgets.flow import FlowLayout
from journal.desktop.widgets.page_preview import PagePreview
from journal.desktop.widgets.parts import button, column, label, row, scrolled
from journal.domain.changes import Changes
from journal.domain.cuts import Choices, Cut, usual

#: What a cut's choices and the lists beside them are read again for.
_CHOSEN = frozenset({"dossier", "areas", "covers", "car"})
#: So long nothing may be chosen before the pages are set anew, in milliseconds.
_CALM = 350
_ELLIPSIS = "\N{HORIZONTAL ELLIPSIS}"
_FOR = {Cut.BUYER: " for a buyer", Cut.VALUER: " for a valuer", Cut.OWN: ""}


class DossierPage(Page):
    """Chooses what a dossier holds, shows its pages, and makes it.

    Attributes:
        choose: asks for the file, given the page and the file proposed; None for none.
        acts: the row of buttons that make something.
    """

    title = "Dossier"
    icon = "dossier"
    inspects = ()

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        self.choose = choose_file
        self.cut = Cut.BUYER
        self._choices: Choices = usual(self.cut)
        self._reading: Task | None = None
        self._is_late = False
        self._task: Task | None = None
        self._calm = QTimer(self, interval=_CALM, singleShot=True)
        self.cuts = CutBar()
        self.panel = ChoicesPanel()
        self.preview = PagePreview(desk)
        self.made = MadeCard()
        self.make_button = button(
            f"&Make the dossier{_ELLIPSIS}",
            self.make,
            icon="dossier",
            role="primary",
            hint="Choose a file",
        )
        self.bundle_button = button(
            f"Make the &bundle{_ELLIPSIS}",
            self.make_bundle,
            icon="bundle",
            hint="Dossier, record and originals in one package that a stranger can check",
        )
        self.album_button = button(
            f"Make the web &album{_ELLIPSIS}",
            self.make_album,
            icon="open",
            hint="A folder of pages that any browser opens, for a club or the family",
        )
        self.usual_button = button(
            "As &usual", self._as_usual, icon="undo", hint="The parts that it has by itself"
        )
        self.state = label("", "muted")
        self._build()
        self.cuts.chosen.connect(self._on_cut)
        self.panel.changed.connect(self._on_chosen)
        self._calm.timeout.connect(self._set_pages)

    def _build(self) -> None:
        views = button(
            f"Standard vie&ws{_ELLIPSIS}", self.choose_views, icon="camera",
            hint="Choose a photo of each side of the car",
        )  # fmt: skip
        words = button(
            f"Private &words{_ELLIPSIS}", self.list_words, icon="lock",
            hint="List names, addresses and numbers to be withheld",
        )  # fmt: skip
        covers = button(
            f"&Covered photos{_ELLIPSIS}", self.show_covers, icon="box",
            hint="Photos with something covered, and covering more",
        )  # fmt: skip
        self.panel.add_acts((views, self.usual_button), (words, covers))
        content = QWidget()
        inner = column(self.panel, spacing=0)
        inner.setContentsMargins(0, 0, 10, 8)
        inner.addStretch(1)
        content.setLayout(inner)
        split = QSplitter(Qt.Orientation.Horizontal)
        split.setChildrenCollapsible(False)
        left = scrolled(content)
        left.setMinimumWidth(440)
        split.addWidget(left)
        split.addWidget(self.preview)
        split.setSizes([560, 600])
        split.setStretchFactor(1, 1)
        self.acts = QWidget()
        flow = FlowLayout(self.acts, spacing=8)
        flow.addWidget(self.make_button)
        flow.addWidget(self.album_button)
        flow.addWidget(self.bundle_button)
        foot = row(self.acts, self.state)
        foot.setStretch(0, 1)
        layout = column(self.cuts, spacing=10, margin=12)
        layout.addWidget(split, 1)
        layout.addWidget(self.made)
        layout.addLayout(foot)
        self.setLayout(layout)
        self.setFocusProxy(self.make_button)

    # --- what is chosen ---

    @property
    def choices(self) -> Choices:
        """What the dossier would hold now."""
        return self._choices

    def refresh(self, changes: Changes | None) -> None:
        """Read the choices again, and set the pages anew, off the main thread."""
        if changes is not None and not changes.kinds:
            return
        if changes is None or changes.kinds & _CHOSEN:
            self._show_choices()
            self._read_private()
        self._calm.start(0 if changes is None else _CALM)
        if changes is not None:
            self.preview.say("Something changed; the pages will follow.")

    def _show_choices(self) -> None:
        if not self.desk.read_only:
            self._choices = self.desk.ask(choices_of, self.cut) or self._choices
        self.cuts.show_cut(self.cut)
        areas = self.desk.ask(area_actions.areas) or ()
        # Of areas that are gone since nothing can be told.
        there = self._choices.areas & {area.id for area in areas}
        self._choices = replace(self._choices, areas=there)
        self.panel.show_choices(self._choices, areas)
        self.usual_button.setEnabled(self._choices != usual(self.cut))

    def _read_private(self) -> None:
        """Count what is listed and covered, where what knows of privacy is loaded too."""
        session = self.desk.session

        def job(_context: object) -> tuple[int, int, str]:
            from journal.actions import covers, privacy
            from journal.domain.privacy import ALWAYS

            words, photos = privacy.private_words(session), covers.covered_photos(session)
            return len(words), len(photos), ALWAYS

        self.desk.read(job, lambda found: self.panel.withheld.show_private(*found), self)

    def show_cut(self, cut: Cut) -> None:
        """Bring a cut to the front."""
        self.cut = cut
        self._choices = self.desk.ask(choices_of, cut) or usual(cut)
        self._show_choices()
        self._calm.start()

    def _on_cut(self, cut: Cut) -> None:
        if cut is not self.cut:
            self.show_cut(cut)

    def _on_chosen(self, choices: Choices) -> None:
        """Keep what was chosen; in a journal open for reading it holds for this one time."""
        self._choices = replace(choices, cut=self.cut)
        if self.desk.read_only:
            self._show_choices()
            self._calm.start()
        else:
            self.desk.act(choose, self._choices)

    def _as_usual(self) -> None:
        if self.desk.read_only:
            self._on_chosen(usual(self.cut))
        else:
            self.desk.act(choose_as_usual, self.cut)

    # --- how it will look ---

    def _set_pages(self) -> None:
        """Set the pages in a reader's thread; one that is out of date ends before the next."""
        if self._reading is not None:
            self._reading.cancel()
            self._is_late = True
            return
        self._is_late = False
        self.preview.say(f"Setting the pages {_ELLIPSIS}")
        session, choices = self.desk.session, self._choices

        def job(context: Any) -> Any:
            from journal.actions.dossier_preview import preview_pages

            return preview_pages(session, choices, context)

        task = self.desk.tasks.read(
            job, owner=self, on_done=self._show_pages, on_failed=self._on_no_pages
        )
        task.on_cancelled = self._on_out_of_date
        self._reading = task

    def _show_pages(self, pages: Any) -> None:
        self._reading = None
        said = f"As it will be, with {pages.photos:,} photos, which are rough here."
        if pages.photos < 2:
            said = "As it will be" + (
                ", with 1 photo, which is rough here." if pages.photos else "."
            )
        self.preview.say(" ".join((said, *pages.notes)))
        self.preview.show_pages(pages)

    def _on_out_of_date(self) -> None:
        self._reading = None
        if self._is_late:
            self._set_pages()

    def _on_no_pages(self, error: Exception) -> None:
        self._reading = None
        if self._is_late:
            self._set_pages()
            return
        self.preview.say("The pages can’t be shown.")
        self.desk.tell_failure(error)

    # --- making it ---

    def make(self) -> None:
        """Ask for a file and make the dossier there."""
        # What redacts a whole record is wanted for this act alone.
        from journal.actions.privacy import title_for_others

        if self._task is not None:
            return
        title = self.desk.ask(title_for_others, self._choices.withheld)
        out = self.choose(self, proposed_file(title or "", _FOR[self.cut]))
        if out is None:
            return
        session, choices = self.desk.session, self._choices

        def job(context: Any) -> Any:
            from journal.actions.dossiers import make_dossier

            return make_dossier(session, out, context, choices)

        self.made.hide()
        self.state.setText("Under way; the strip at the bottom shows how far.")
        self.make_button.setEnabled(False)
        task = self.desk.run(
            "Making the dossier",
            job,
            self._on_made,
            partial(self._end, "Stopped; no file was made."),
        )
        task.on_failed = self._on_failed
        self._task = task

    def _on_made(self, report: Any) -> None:
        self._end("")
        self.made.show_report(report)
        if self.isVisible() and not isinstance(QApplication.focusWidget(), QLineEdit):
            self.made.focus()

    def _on_failed(self, error: Exception) -> None:
        self._end("It could not be made.")
        self.desk.tell_failure(error)

    def _end(self, words: str) -> None:
        self._task = None
        self.state.setText(words)
        self.make_button.setEnabled(True)

    def make_bundle(self) -> None:
        """Ask what goes into a bundle, and make it."""
        from journal.desktop.dialogs.bundle import BundleDialog

        dialog = BundleDialog(self.desk, self.window(), self._choices)
        dialog.exec()
        dialog.deleteLater()

    def make_album(self) -> None:
        """Ask where the web album is to be, and make it."""
        from journal.desktop.dialogs.album import AlbumDialog

        dialog = AlbumDialog(self.desk, self.window(), self._choices)
        dialog.exec()
        dialog.deleteLater()

    # --- what belongs to it ---

    def choose_views(self) -> None:
        """Choose the photos of the standard views."""
        from journal.desktop.dialogs.opening import open_dialog
        from journal.desktop.dialogs.standard_views import StandardViewsDialog

        open_dialog(StandardViewsDialog(self.desk, self.window()))

    def list_words(self) -> None:
        """List private words."""
        from journal.desktop.dialogs.opening import open_dialog
        from journal.desktop.dialogs.private_words import PrivateWordsDialog

        open_dialog(PrivateWordsDialog(self.desk, self.window()))

    def show_covers(self) -> None:
        """Show the photos with something covered, and cover more."""
        from journal.desktop.dialogs.covered_photos import CoveredPhotosDialog
        from journal.desktop.dialogs.opening import open_dialog

        open_dialog(CoveredPhotosDialog(self.desk, self.window()))
