"""Laying an after photo over a before: chosen or proposed, found or by hand, looked at and kept."""

from functools import partial
from pathlib import Path
from typing import Any

from PySide6.QtGui import QPixmap
from PySide6.QtWidgets import (
    QDialog,
    QFileDialog,
    QLineEdit,
    QPushButton,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from journal.actions import pairs as actions
from journal.actions.pair_pictures import SheetLook, export_pair
from journal.desktop.desk import Desk
from journal.desktop.dialogs import pair_reading as reading
from journal.desktop.dialogs.pair_choice import PairChoice
from journal.desktop.dialogs.pair_looks import PairLooks
from journal.desktop.dialogs.pair_points import PairPoints
from journal.desktop.tasks import Task
from journal.desktop.widgets.announce import announce
from journal.desktop.widgets.overlay_view import Look, OverlayView
from journal.desktop.widgets.parts import button, label, row
from journal.domain.areas import Area
from journal.domain.errors import JournalError
from journal.domain.ids import PhotoId
from journal.domain.pairs import (
    FEWEST_POINTS,
    SIDE_BY_SIDE,
    WANTED_POINTS,
    Fit,
    How,
    Pair,
    PointPair,
)
from journal.domain.photos import Photo
from journal.domain.progress import Context


class PairDialog(QDialog):
    """Two photos of a repair area, shown over each other; nothing is kept before it is looked at.

    Attributes:
        choice: the choice of the two photos.
        view: the two, over each other.
        points: showing by hand how they lie.
        verdict: what was found, in words.
    """

    def __init__(
        self,
        desk: Desk,
        area: Area,
        parent: QWidget | None = None,
        *,
        before: PhotoId | None = None,
        after: PhotoId | None = None,
        fit: Fit | None = None,
    ) -> None:
        super().__init__(parent)
        self._desk = desk
        self._area = area
        self._fit: Fit | None = None
        self._kept: Pair | None = None
        self._task: Task | None = None
        self.setWindowTitle(f"Before and after: {area.name}")
        self.resize(1080, 720)
        self.choice = PairChoice(desk, area)
        self.view = OverlayView()
        self.looks = PairLooks(self.view)
        self.points = PairPoints()
        self.verdict = label("")
        self.caption = QLineEdit()
        self.caption.setPlaceholderText("What the pair shows, in your words")
        self.caption.setAccessibleName("Caption")
        self._build()
        self._connect()
        self.choice.fill(before, after)
        self._on_chosen(fit)

    # --- layout

    def _build(self) -> None:
        self.keep = button("&Keep", self._on_keep, icon="done", role="primary")
        self.by_hand = button(
            "By &hand", self._on_by_hand, icon="corners", hint="Show the same spots on both"
        )
        self.by_hand.setCheckable(True)
        self.flat = button(
            "&Side by side only", self._on_flat, hint="Keep the two without laying one over"
        )
        self.apart = button("Take a&part", self._on_apart, icon="remove", role="quiet")
        self.save = button("Save as a &picture", self._on_save, icon="file")
        self.close_button = button("Close", self.accept)
        self._middle = QStackedWidget()
        self._middle.addWidget(self.view)
        self._middle.addWidget(self.points)
        verdict = row(self.verdict, self.keep, self.by_hand, self.flat)
        verdict.setStretch(0, 1)
        below = row(label("Caption", wrap=False), self.caption, self.apart, self.save)
        below.addWidget(self.close_button)
        below.setStretch(1, 1)
        outer = QVBoxLayout(self)
        outer.setContentsMargins(16, 12, 16, 12)
        outer.setSpacing(8)
        outer.addWidget(self.choice)
        outer.addWidget(self.looks)
        outer.addWidget(self._middle, 1)
        outer.addLayout(verdict)
        outer.addLayout(below)
        for one in self.findChildren(QPushButton):
            one.setAutoDefault(False)

    def _connect(self) -> None:
        self.choice.chosen.connect(self._on_chosen)
        self.choice.told.connect(self._say)
        self.points.changed.connect(self._on_points)
        self.caption.editingFinished.connect(self._on_caption)
        self._desk.changed.connect(self._on_changed)

    # --- which photos

    def _on_chosen(self, known: Fit | None = None) -> None:
        """Two photos were chosen: show how they are kept, or find how one lies on the other."""
        self.by_hand.setChecked(False)
        self.by_hand.setText("By &hand")
        self.looks.setEnabled(True)
        self._middle.setCurrentWidget(self.view)
        both = self.choice.both()
        self._kept = self._kept_pair(both) if both else None
        self.caption.setText(self._kept.caption if self._kept else "")
        self.points.set_points(())
        if both is None:
            self._fit = None
            self.view.say("Choose two photos of the repair area, one before and one after.")
            self.looks.set_laid(is_laid=False)
            self._say("A pair needs two photos. Choose more for the repair area on its page.")
            return
        if self._kept is not None and known is None:
            known = self._kept.fit
        self._read(both, known)

    def _kept_pair(self, both: tuple[Photo, Photo]) -> Pair | None:
        ids = both[0].id, both[1].id
        found = self._desk.ask(actions.area_pairs, self._area.id) or ()
        return next((p for p in found if (p.before_id, p.after_id) == ids), None)

    # --- looking

    def _read(self, both: tuple[Photo, Photo], known: Fit | None) -> None:
        self._stop()
        session = self._desk.session
        self._fit = None
        if known is None:
            self.view.say("Looking for how one lies on the other \N{HORIZONTAL ELLIPSIS}")
        self._say("Looking \N{HORIZONTAL ELLIPSIS}" if known is None else "")

        def job(context: Context) -> reading.Seen:
            return reading.see(session, *both, known, context)

        self._task = self._desk.read(job, partial(self._on_seen, both), self)

    def _on_seen(self, both: tuple[Photo, Photo], seen: reading.Seen) -> None:
        if both != self.choice.both():
            return
        self._fit = seen.fit
        if seen.pictures is None:
            self.view.say(seen.problem)
            self.looks.set_laid(is_laid=False)
            self._say(seen.problem)
            return
        before, after = (QPixmap.fromImage(image) for image in seen.pictures)
        self.view.show_pair(before, after)
        self.looks.set_laid(is_laid=seen.fit is not None and seen.fit.is_laid)
        self._say(self._verdict())
        announce(self, self.verdict.text())

    def _verdict(self) -> str:
        fit = self._fit
        if fit is None:
            return (
                "Could not find how one lies on the other. Show it by hand with "
                f"{FEWEST_POINTS} spots seen on both, better {WANTED_POINTS}; or keep the two "
                "side by side."
            )
        if self._kept is not None and fit == self._kept.fit:
            return f"Kept, {_how(fit)}." if fit.is_laid else "Kept, side by side."
        if fit.how is How.FOUND:
            return f"{_how(fit).capitalize()}. Does it lie right? Look at what the repair left."
        return f"Laid {_how(fit)}. Does it lie right?"

    def _say(self, words: str) -> None:
        """Say what is found, and offer what can be done now."""
        self.verdict.setText(words)
        both, can = self.choice.both(), not self._desk.read_only
        is_new = self._fit is not None and (self._kept is None or self._fit != self._kept.fit)
        self.keep.setEnabled(can and both is not None and is_new and bool(words))
        self.flat.setEnabled(can and both is not None and self._is_other_than_flat())
        self.by_hand.setEnabled(can and both is not None)
        for act in (self.apart, self.save):
            act.setVisible(self._kept is not None)
        self.apart.setEnabled(can)
        self.caption.setEnabled(can and both is not None)

    def _is_other_than_flat(self) -> bool:
        return self._kept is None or self._kept.fit.is_laid

    # --- by hand

    def _on_by_hand(self) -> None:
        both = self.choice.both()
        self.by_hand.setText("Show it l&aid" if self.by_hand.isChecked() else "By &hand")
        if not self.by_hand.isChecked() or both is None:
            self._middle.setCurrentWidget(self.view)
            self.looks.setEnabled(True)
            if both is not None and self._fit is not None:
                self._read(both, self._fit)
            return
        fit = self._fit
        if fit is not None and fit.points:
            self.points.set_points(actions.shown_points(*both, fit))
        self._middle.setCurrentWidget(self.points)
        self.looks.setEnabled(False)
        session = self._desk.session
        self._desk.read(
            lambda _context: reading.wholes(session, both),
            lambda found: self.points.show_pictures(*map(_pixmap, found)),
            self,
        )
        self.points.views[0].setFocus()
        self._on_points(self.points.points())

    def _on_points(self, points: tuple[PointPair, ...]) -> None:
        both = self.choice.both()
        if both is None:
            return
        count = len(points)
        if count < FEWEST_POINTS:
            self._fit = None
            self._say(f"{count} of {WANTED_POINTS} spots are on both photos.")
            return
        try:
            fit = actions.fit_by_hand(*both, points)
        except JournalError as error:
            self._fit = None
            self._say(str(error))
            return
        self._fit = fit
        words = f"{count} spots, error {fit.error_px or 0.0:.1f} pixels"
        if count == FEWEST_POINTS:
            words += ": with four it is always nothing; two more show how well it fits"
        self._say(f"{words}. Press “Show it laid” to look, then Keep.")

    # --- keeping

    def _on_keep(self) -> None:
        if self._fit is not None:
            self._keep(self._fit)

    def _on_flat(self) -> None:
        self._keep(SIDE_BY_SIDE)

    def _keep(self, fit: Fit) -> None:
        both = self.choice.both()
        if both is None:
            return
        caption, area_id = self.caption.text(), self._area.id
        ids = both[0].id, both[1].id
        if self._desk.act(actions.keep_pair, area_id, *ids, fit, caption) is None:
            return
        self._on_chosen(fit)

    def _on_caption(self) -> None:
        kept = self._kept
        if kept is not None and self.caption.text().strip() != kept.caption:
            self._desk.act(actions.set_pair_caption, kept.id, self.caption.text())

    def _on_apart(self) -> None:
        if self._kept is not None:
            self._desk.act(actions.remove_pair, self._kept.id)

    def _on_changed(self, _changes: object) -> None:
        """Kept, taken apart or undone: say so."""
        both = self.choice.both()
        kept = self._kept_pair(both) if both else None
        if kept == self._kept:
            return
        self._kept = kept
        if kept is not None:
            self.caption.setText(kept.caption)
        if self.verdict.text():
            self._say(self._verdict())

    def _stop(self) -> None:
        if self._task is not None:
            self._task.cancel()
            self._task = None

    # --- as a file

    def _on_save(self) -> None:
        kept = self._kept
        if kept is None:
            return
        name = "".join(c for c in self._area.name if c.isalnum() or c in " -_")[:60].strip()
        proposed = Path.home() / f"{name or 'Before and after'}.jpg"
        chosen, _ = QFileDialog.getSaveFileName(
            self, "Save the pair as", str(proposed), "Picture (*.jpg *.png)"
        )
        if not chosen:
            return
        session, at = self._desk.session, self.view.at
        divided = self.view.look is not Look.SIDE_BY_SIDE and kept.fit.is_laid
        look = SheetLook.DIVIDED if divided else SheetLook.SIDE_BY_SIDE

        def job(_context: Context) -> str:
            try:
                made = export_pair(session, kept, Path(chosen), look, at=at)
            except JournalError as error:
                return str(error)
            return f"Saved: {made.name}. Places you covered on photos are covered in it."

        self._desk.read(job, self._say, self)

    def done(self, result: int) -> None:
        """Stop what is being read, keep the caption."""
        self._stop()
        self.choice.stop()
        self.view.stop()
        self._on_caption()
        super().done(result)


def _how(fit: Fit) -> str:
    if fit.how is How.FOUND:
        return f"found: {fit.inliers:,} spots agree, to {fit.error_px:.1f} pixels on average"
    return f"by hand: {len(fit.points)} spots, error {fit.error_px or 0.0:.1f} pixels"


def _pixmap(image: Any) -> QPixmap | None:
    return None if image is None else QPixmap.fromImage(image)
