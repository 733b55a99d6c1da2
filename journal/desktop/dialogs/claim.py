"""The words of one claim: the program's or the owner's; its grades are nobody's to change."""

from PySide6.QtWidgets import QCheckBox, QWidget

from journal.actions import claims as actions
from journal.desktop.desk import Desk
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.widgets.grade_marks import grade_words
from journal.desktop.widgets.parts import button, label, row
from journal.desktop.widgets.words_edit import WordsEdit
from journal.domain.claims import Claim
from journal.domain.evidence import graded

_WHY = (
    "Grades can’t be changed here: they follow from what is recorded, so that a reader can trust "
    "them. Add a photo, a paper or a reading, and they change by themselves."
)


class ClaimDialog(FormDialog):
    """Words, and whether it is printed.

    Attributes:
        words: the owner's words; empty for the program's.
        left_out: whether it is left out of the dossier.
    """

    def __init__(self, desk: Desk, area: str, claim: Claim, parent: QWidget | None = None) -> None:
        super().__init__(f"Claim on “{area}”", "&Keep", parent)
        self._desk = desk
        self._claim = claim
        self.setMinimumWidth(640)
        self.words = WordsEdit("Empty: the program’s words stand", lines=4)
        self.words.setPlainText(claim.own or claim.words)
        self.usual = button("The &program’s words", self._on_usual, icon="undo")
        self.left_out = QCheckBox("&Leave it out of the dossier, which says how many were")
        self.left_out.setChecked(claim.left_out)
        self.form.addRow("The program says", label(claim.words))
        self.add_row("In your &words", self.words, "The dossier marks words of yours as such.")
        self.form.addRow("", _beside(self.usual))
        self.form.addRow("", self.left_out)
        grades = [grade_words(grade, count) for grade, count in graded(claim.pieces)]
        self.grades = label("\n".join(f"· {said}" for said in grades) or "Nothing")
        self.form.addRow("Behind it", self.grades)
        self.form.addRow("", label(_WHY, "muted"))
        self.accept_button.setEnabled(not desk.read_only)
        self.words.setReadOnly(desk.read_only)

    def submit(self) -> bool:
        """Keep the words, and whether it is left out, where they are others now."""
        session, claim = self._desk.session, self._claim
        words = self.words.words()
        if words != (claim.own or claim.words):
            self._desk.announce(actions.set_claim_words(session, claim.area_id, claim.key, words))
        left_out = self.left_out.isChecked()
        if left_out != claim.left_out:
            self._desk.announce(
                actions.leave_out_claim(session, claim.area_id, claim.key, left_out=left_out)
            )
        return True

    def _on_usual(self) -> None:
        self.words.setPlainText(self._claim.words)


def _beside(widget: QWidget) -> QWidget:
    made = QWidget()
    made.setLayout(row(widget, None))
    return made
