"""What a check of a bundle or a photo found, so that a stranger understands it."""

from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Slot
from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QFormLayout,
    QHeaderView,
    QTreeWidgetItem,
    QWidget,
)

from journal.desktop.widgets.parts import PlainTree, column, label, scrolled
from journal.domain.checks import (
    BundleCheck,
    CheckReport,
    Fault,
    Likeness,
    PictureCheck,
    StampFound,
)
from journal.domain.ids import PhotoId

if TYPE_CHECKING:
    from journal.actions.session import Session
    from journal.desktop.tasks import TaskRunner

Report = CheckReport | BundleCheck | PictureCheck


def verdict(report: BundleCheck | PictureCheck) -> str:
    """The outcome in a few words."""
    if isinstance(report, PictureCheck):
        return _picture_verdict(report)
    if report.refused:
        return "Refused: it was not looked into"
    if report.faults:
        return "Something was changed or is missing"
    return "Whole: every file is as its lists say"


def _picture_verdict(report: PictureCheck) -> str:
    kinds = {one.likeness for one in report.pictures}
    if kinds == {Likeness.ORIGINAL}:
        return "It is an original of this journal"
    if Likeness.UNKNOWN not in kinds:
        return "A copy: the same picture, not the same bytes"
    if kinds == {Likeness.UNKNOWN}:
        return "Not in this journal"
    return "Some of it is in this journal"


class CheckResultDialog(QDialog):
    """The outcome of a check: the verdict, each fault, and what was found on the way.

    ``show_photo`` shows the photo that a picture was found to be, when its row is pressed.
    """

    def __init__(
        self,
        report: BundleCheck | PictureCheck,
        parent: QWidget | None = None,
        show_photo: Callable[[PhotoId], object] | None = None,
    ) -> None:
        super().__init__(parent)
        self._show_photo = show_photo
        self._photos: tuple[PhotoId | None, ...] = ()
        self.setWindowTitle("The check")
        self.resize(720, 520)
        layout = column(label(verdict(report), "heading"), spacing=10, margin=20)
        for sentence in _opening(report):
            layout.addWidget(label(sentence))
        if report.faults:
            layout.addWidget(_table("Faults", ("Where", "What is wrong"), _rows(report.faults)), 2)
        if isinstance(report, PictureCheck):
            columns = ("Picture", "Is", "Photo", "Taken")
            rows = [(p.what, p.likeness.value, p.name, p.taken) for p in report.pictures]
            table = _table("Pictures", columns, rows)
            self._photos = tuple(one.photo_id for one in report.pictures)
            if show_photo is not None:
                table.itemActivated.connect(self._on_item)
                layout.addWidget(label("Press Enter on a picture to see its photo.", "muted"))
            layout.addWidget(table, 3)
        else:
            found = QWidget()
            lines = QFormLayout(found)
            lines.setHorizontalSpacing(16)
            lines.setVerticalSpacing(8)
            lines.setLabelAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)
            for name, words in _found(report):
                said = label(words)
                said.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
                title = label(name, "muted", wrap=False)
                title.setAlignment(Qt.AlignmentFlag.AlignTop)
                lines.addRow(title, said)
            layout.addWidget(scrolled(found), 3)
        for note in report.notes:
            layout.addWidget(label(note, "muted"))
        close = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        close.rejected.connect(self.reject)
        layout.addWidget(close)
        self.setLayout(layout)

    @Slot(QTreeWidgetItem)
    def _on_item(self, item: QTreeWidgetItem) -> None:
        row = item.treeWidget().indexOfTopLevelItem(item)
        photo = self._photos[row] if 0 <= row < len(self._photos) else None
        if photo is not None and self._show_photo is not None:
            self.accept()
            self._show_photo(photo)


def check_and_show(
    tasks: "TaskRunner",
    path: Path,
    session: "Session | None",
    parent: QWidget,
    tell: Callable[[Exception], None],
    authorities: tuple[Path, ...] = (),
    show_photo: Callable[[PhotoId], object] | None = None,
) -> None:
    """Check what lies at a path, off the main thread, and show what was found.

    ``tell`` is told what stands in the way, ``show_photo`` shows a photo that was found.
    """
    from journal.actions.checking import check_path

    def show(report: Report) -> None:
        dialog = _dialog_of(report, parent, show_photo)
        dialog.finished.connect(dialog.deleteLater)
        dialog.open()

    tasks.write(
        f"Checking “{path.name}”",
        lambda context: check_path(path, context, journal=session, authorities=authorities),
        owner=parent,
        on_done=show,
        on_failed=tell,
    )


def _dialog_of(
    report: Report, parent: QWidget, show_photo: Callable[[PhotoId], object] | None
) -> QDialog:
    from journal.desktop.dialogs.checked import CheckedDialog

    if isinstance(report, CheckReport):
        return CheckedDialog(report, parent)
    return CheckResultDialog(report, parent, show_photo)


def _opening(report: BundleCheck | PictureCheck) -> Iterator[str]:
    if isinstance(report, PictureCheck):
        yield f"“{report.where}” has the SHA-256 {report.sha256}."
        return
    if report.refused:
        yield f"“{report.where}”: {report.refused}"
        yield "A package like this may be damaged, or made to do harm. Nothing was unpacked."
        return
    by = f" by {report.by}" if report.by else ""
    made = f", made on {report.made}{by}" if report.made else ""
    yield f"{report.title or report.where}{made}."


def _found(report: BundleCheck) -> Iterator[tuple[str, str]]:
    if report.refused:
        return
    size = f"{report.size / 1e6:,.1f} MB"
    lists = " and ".join(report.algorithms)
    yield "Files", f"{report.files:,} in a {report.form}, {size}, each checked by {lists}."
    if chain := report.chain:
        holds = "each follows from those before it" if not chain.broken else "broken"
        span = f"{chain.first[:10]} to {chain.last[:10]}"
        yield "History", f"{chain.edits:,} edits, {span}: {holds}."
        if chain.broken:
            until = f" It holds up to {chain.good_until}." if chain.good_until else ""
            yield "", f"Broken from {chain.broken} on.{until}"
    yield "Signature", _signature_words(report)
    if not report.stamps:
        yield "Time stamp", "None."
    for stamp in report.stamps:
        yield "Time stamp", _stamp_words(stamp)
    for warning in report.warnings:
        yield "Note", f"{warning.where}: {warning.what}"


def _signature_words(report: BundleCheck) -> str:
    found = report.signature
    if found is None:
        return "None: whoever could change it could also write its lists anew."
    if not found.good:
        return "It does not hold."
    if found.ours:
        return f"The lists are signed with your own key:\n{found.fingerprint}"
    return (
        "The lists are signed with this key; ask the owner for its fingerprint by another way, and "
        f"compare:\n{found.fingerprint}"
    )


def _stamp_words(stamp: StampFound) -> str:
    when = f"{stamp.made:%Y-%m-%d %H:%M:%S} UTC" if stamp.made else "at an unknown time"
    standing = "Holds" if stamp.good else "Does not hold"
    return f"{standing}: {when}, by {stamp.authority or 'nobody known'}. {' '.join(stamp.said)}"


def _rows(faults: tuple[Fault, ...]) -> list[tuple[str, str]]:
    return [(fault.where, fault.what) for fault in faults]


def _table(name: str, columns: tuple[str, ...], rows: Sequence[tuple[str, ...]]) -> PlainTree:
    made = PlainTree(name, columns)
    for cells in rows:
        item = QTreeWidgetItem(list(cells))
        for number, text in enumerate(cells):
            item.setToolTip(number, text)
        made.addTopLevelItem(item)
    made.setUniformRowHeights(False)
    made.setWordWrap(True)
    made.header().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
    if len(columns) == 2:
        made.header().setSectionResizeMode(0, QHeaderView.ResizeMode.Interactive)
        made.setColumnWidth(0, 240)
        made.header().setSectionResizeMode(1, QHeaderView.ResizeMode.Stretch)
    return made
