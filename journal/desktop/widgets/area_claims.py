"""What the record supports of a repair area: each claim with the evidence behind it."""

from collections.abc import Mapping, Sequence
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QAbstractButton, QApplication, QVBoxLayout, QWidget

from journal.desktop.desk import Desk
from journal.desktop.tasks import Task
from journal.desktop.widgets.flow import FlowLayout
from journal.desktop.widgets.grade_marks import GradeMark
from journal.desktop.widgets.parts import button, clear_layout, column, label, row
from journal.domain.areas import Area
from journal.domain.evidence import Piece, graded

if TYPE_CHECKING:
    from journal.domain.claims import AreaClaims, Claim

# What claims rest on is large; it is loaded in a reader's thread, and dialogs when they are asked
# for.

_WORDS = (
    "These claims stand in the dossier. Grades follow from what is recorded; add a photo, a "
    "paper or a reading, and they change by themselves."
)
_ALONE = "Nothing but your word stands behind it, and the dossier says so."
_NOTHING = "The record says nothing yet that a dossier could state."


class AreaClaimsBox(QWidget):
    """The claims on one area; a press on a grade shows its evidence and opens it."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._area: Area | None = None
        self._reading: Task | None = None
        self.claims: tuple[Claim, ...] = ()
        self._rows = QVBoxLayout()
        self._rows.setSpacing(10)
        layout = column(
            label("What the record supports", "subheading"), label(_WORDS, "muted"), spacing=6
        )
        layout.addLayout(self._rows)
        self.setLayout(layout)

    def show_area(self, area: Area) -> None:
        """Read the claims in a reader's thread, and show them."""
        is_another = self._area is None or self._area.id != area.id
        self._area = area
        if is_another:
            clear_layout(self._rows)
        if self._reading is not None:
            self._reading.cancel()
        session, area_id = self._desk.session, area.id

        def job(_context: object) -> "tuple[AreaClaims, dict[Piece, str]]":
            from journal.actions import evidence
            from journal.actions.claims import area_claims

            found = area_claims(session, area_id)
            pieces = {piece for claim in found.claims for piece in claim.pieces}
            return found, evidence.in_words(session, pieces | set(found.loose))

        self._reading = self._desk.read(job, self._show, self)

    def _show(self, read: "tuple[AreaClaims, dict[Piece, str]]") -> None:
        self._reading = None
        found, words = read
        self.claims = found.claims
        held = self._held()
        clear_layout(self._rows)
        for claim in found.claims:
            self._rows.addWidget(self._claim_row(claim, words))
        if not found.claims:
            self._rows.addWidget(label(_NOTHING, "muted"))
        if found.loose:
            said = "Recorded for it, and behind none of these claims:"
            self._rows.addWidget(label(said, "muted"))
            self._rows.addWidget(self._marks(found.loose, words))
        self._give_back(held)

    def _give_back(self, held: str) -> None:
        for at in range(self._rows.count() if held else 0):
            item = self._rows.itemAt(at)
            made = item.widget() if item else None
            for one in made.findChildren(QAbstractButton) if made else ():
                if one.accessibleName() == held:
                    # It can have the focus once it is shown.
                    QTimer.singleShot(0, one, one.setFocus)

    def _held(self) -> str:
        """The name of the button that has the focus here, which stays here meanwhile.

        Qt would pass it on to the next, far up the page, and scroll there.
        """
        focused = QApplication.focusWidget()
        if focused is None or not self.isAncestorOf(focused):
            return ""
        self.setFocus()
        return focused.accessibleName()

    def _claim_row(self, claim: "Claim", words: Mapping[Piece, str]) -> QWidget:
        made = QWidget()
        layout = column(spacing=2)
        change = button(
            "Words", partial(self._on_words, claim), icon="edit", role="quiet",
            hint="Say it in your own words, or leave it out",
        )  # fmt: skip
        change.setAccessibleName(f"Words of the claim “{claim.key}”")
        said = label(claim.said, "muted" if claim.left_out else "")
        said.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        head = row(said, change)
        head.setStretch(0, 1)
        layout.addLayout(head)
        for sentence in _remarks(claim):
            layout.addWidget(label(sentence, "muted"))
        if claim.pieces:
            layout.addWidget(self._marks(claim.pieces, words))
        made.setLayout(layout)
        return made

    def _marks(self, pieces: Sequence[Piece], words: Mapping[Piece, str]) -> QWidget:
        made = QWidget()
        flow = FlowLayout(made, spacing=4)
        for grade, _count in graded(pieces):
            own = [piece for piece in pieces if piece.grade is grade]
            flow.addWidget(GradeMark(grade, own, words, self._open))
        return made

    def _open(self, piece: Piece) -> None:
        from journal.desktop.widgets.evidence_opening import open_piece

        if self._area is not None:
            open_piece(self._desk, piece, self._area, self.window())

    def _on_words(self, claim: "Claim") -> None:
        from journal.desktop.dialogs.claim import ClaimDialog
        from journal.desktop.dialogs.opening import open_dialog

        if self._area is not None:
            open_dialog(ClaimDialog(self._desk, self._area.name, claim, self.window()))


def _remarks(claim: "Claim") -> list[str]:
    """What is to be said of a claim beside its words and its evidence."""
    said = []
    if claim.left_out:
        said.append("Left out of the dossier, which says that something was.")
    if claim.own:
        said.append(f"In your words. The program’s: {claim.words}")
    if claim.is_word_alone:
        said.append(_ALONE)
    return said
