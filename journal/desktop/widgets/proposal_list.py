"""Where the photos in hand may belong: up to three panels with the reason, for one key each."""

from collections.abc import Mapping

from PySide6.QtCore import Signal
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QCheckBox, QVBoxLayout, QWidget

from journal.desktop.widgets.parts import button, label, row
from journal.desktop.widgets.proposal_row import ProposalRow
from journal.domain.ids import PanelId, PhotoId
from journal.domain.proposals import MOST, Proposal, reason

_MAY_BELONG = "May belong to"
_NOTHING_YET = "Once a few photos are pinned, the program proposes where others belong."


class ProposalList(QWidget):
    """Up to three proposed panels, one by one or by sitting, and the way past them."""

    #: A proposal was chosen: its place in the list, from 1.
    chosen = Signal(int)
    #: The photos in hand are to be left for now.
    skipped = Signal()
    #: Photos are to be taken in hand one by one, or by whole sitting.
    one_by_one_changed = Signal(bool)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.proposals: tuple[Proposal, ...] = ()
        self.title = label(_MAY_BELONG, "muted")
        self.rows = tuple(ProposalRow(number) for number in range(1, MOST + 1))
        self.one_by_one = QCheckBox("&One by one")
        self.one_by_one.setToolTip("Take the photos of a sitting in hand one by one (O)")
        self.skip = button(
            "Skip", self.skipped.emit, icon="next", role="quiet", hint="Leave for now (N)"
        )
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(4)
        layout.addWidget(self.title)
        for number, made in enumerate(self.rows, 1):
            made.clicked.connect(lambda _checked=False, number=number: self.chosen.emit(number))
            layout.addWidget(made)
        layout.addLayout(row(self.one_by_one, None, self.skip))
        self.one_by_one.toggled.connect(self.one_by_one_changed)
        self.show_none()

    def show_proposals(
        self,
        proposals: tuple[Proposal, ...],
        labels: Mapping[PanelId, str],
        images: Mapping[PhotoId, QImage],
        *,
        asked: int,
        writable: bool,
    ) -> None:
        """Show proposals for ``asked`` photos, each with the pinned photo that speaks for it."""
        self.proposals = proposals
        self.title.setText(_MAY_BELONG if proposals else _NOTHING_YET)
        self.title.show()
        for made, proposal in zip(self.rows, proposals, strict=False):
            name = labels.get(proposal.panel_id, "?")
            words = reason(proposal)
            if asked > 1:
                words = f"for {proposal.share} of {asked}: {words}"
            made.show_proposal(name, words, images.get(proposal.shown))
            made.setEnabled(writable)
        for place, made in enumerate(self.rows):
            made.setVisible(place < len(proposals))

    def wait(self) -> None:
        """Let nothing be chosen until the proposals for other photos come."""
        self.proposals = ()
        for made in self.rows:
            made.setEnabled(False)

    def show_none(self) -> None:
        """Show no proposal: nothing that lacks a place is in hand."""
        self.proposals = ()
        self.title.hide()
        for made in self.rows:
            made.hide()
