"""Grades of evidence as small marks with words: a button for each, which opens what it counts."""

from collections.abc import Callable, Mapping, Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QMenu, QToolButton, QWidget

from journal.desktop import icons
from journal.domain.evidence import Grade, Piece

#: Which drawn icon stands for a grade.
GRADE_ICONS = {
    Grade.CAMERA: "camera",
    Grade.PAPER: "receipt",
    Grade.INSTRUMENT: "measure",
    Grade.PHOTO: "photo",
    Grade.HOURS: "hours",
    Grade.LOST: "lost",
    Grade.WORD: "entry",
}
#: So many pieces a menu lists at most.
_MOST = 30


def grade_words(grade: Grade, count: int) -> str:
    """A grade with how often it is there."""
    return grade.value if count == 1 else f"{count:,} × {grade.value}"


class GradeMark(QToolButton):
    """One grade; pressed, it lists its pieces, each of which opens."""

    def __init__(
        self,
        grade: Grade,
        pieces: Sequence[Piece],
        words: Mapping[Piece, str],
        on_open: Callable[[Piece], object],
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.grade = grade
        self.pieces = tuple(pieces)
        said = grade_words(grade, len(self.pieces))
        icons.put(self, GRADE_ICONS[grade])
        self.setText(said)
        self.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextBesideIcon)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setProperty("role", "quiet")
        self.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
        self.setAccessibleName(f"Evidence: {said}")
        self.setToolTip("Show what it is")
        menu = QMenu(self)
        for piece in self.pieces[:_MOST]:
            act = menu.addAction(words.get(piece, piece.kind).replace("&", "&&"))
            act.triggered.connect(lambda _checked=False, piece=piece: on_open(piece))
        if (left := len(self.pieces) - _MOST) > 0:
            menu.addAction(f"and {left:,} more").setEnabled(False)
        self.setMenu(menu)
