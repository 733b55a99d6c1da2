"""What a check of the journal found."""

from PySide6.QtWidgets import QDialog, QDialogButtonBox, QTreeWidgetItem, QWidget

from journal.desktop.widgets.parts import PlainTree, column, label
from journal.domain.checks import CheckReport


def check_words(report: CheckReport) -> str:
    """The outcome in a sentence or two."""
    looked = f"{report.originals:,} originals and {report.edits:,} edits were checked"
    loose = (
        f" {report.loose:,} files belong to photos removed or undone; that is no fault."
        if report.loose
        else ""
    )
    if not report.faults:
        return f"All is as it was recorded: {looked}.{loose}"
    faults = "1 fault was" if len(report.faults) == 1 else f"{len(report.faults):,} faults were"
    until = f" The history of changes holds up to {report.good_until}." if report.good_until else ""
    return f"{looked}; {faults} found.{until}{loose}"


class CheckedDialog(QDialog):
    """The outcome of a check, each fault named."""

    def __init__(self, report: CheckReport, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("The check")
        self.setMinimumWidth(560)
        faults = PlainTree("Faults found", ["Where", "What is wrong"])
        faults.addTopLevelItems([QTreeWidgetItem([f.where, f.what]) for f in report.faults])
        faults.setColumnWidth(0, 260)
        faults.setVisible(bool(report.faults))
        close = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        close.rejected.connect(self.reject)
        title = "Something is wrong" if report.faults else "Nothing is wrong"
        words = label(check_words(report))
        self.setLayout(column(label(title, "heading"), words, faults, close, margin=20))
