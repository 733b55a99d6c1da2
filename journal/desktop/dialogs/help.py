"""The help that comes with the program."""

from importlib.metadata import version

from PySide6.QtCore import Qt, QUrl, Slot
from PySide6.QtGui import QTextDocument
from PySide6.QtWidgets import (
    QDialog,
    QListWidgetItem,
    QSplitter,
    QTextBrowser,
    QVBoxLayout,
    QWidget,
)

from journal.desktop.widgets.parts import PlainList
from journal.domain.cautions import CAUTIONS
from journal.files.assets import asset

#: The pages of the help, in order: the name of the file and the title.
HELP_PAGES = (
    ("start", "Where to start"),
    ("new", "1. New journal"),
    ("photos", "2. Add photos"),
    ("pin", "3. Pin photos"),
    ("areas", "4. Repair areas"),
    ("receipts", "5. Receipts"),
    ("hours", "Hours, the clock, people"),
    ("sheets", "Spreadsheets and bank lines"),
    ("costs", "What it came to"),
    ("find", "6. Find"),
    ("gaps", "7. Gaps"),
    ("pairs", "Before and after, bursts"),
    ("claims", "Claims and evidence"),
    ("dossier", "8. Dossier"),
    ("record", "What a record should hold"),
    ("album", "Web album"),
    ("bundle", "9. Bundle and check"),
    ("survey", "Survey and estimate"),
    ("wanted", "Wanted parts"),
    ("shape", "Shape the drawing"),
    ("trace", "Trace a picture"),
    ("metal", "Draw the metal"),
    ("years", "The years, tints, taking it out"),
    ("dates", "Dates, and how they are known"),
    ("folder", "The journal's folder"),
    ("keys", "Keys"),
    ("cautions", "Cautions"),
    ("about", "About"),
)


def help_text(page: str) -> str:
    """A page of the help as Markdown."""
    text = asset(f"help/{page}.md").read_text(encoding="utf-8")
    if page == "about":
        return text.replace("VERSION", version("restoration-journal"))
    if page == "cautions":
        return (
            text
            + "\n\n"
            + "\n\n".join(
                f"## {caution.title}\n\n{caution.text}"
                + (f"\n\n*Source: {caution.source}.*" if caution.source else "")
                for caution in CAUTIONS
            )
        )
    return text


class HelpDialog(QDialog):
    """The pages at the left, the chosen one at the right."""

    def __init__(self, page: str = "start", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("Help")
        self.resize(860, 620)
        self._list = PlainList("Pages of the help")
        for name, title in HELP_PAGES:
            item = QListWidgetItem(title)
            item.setData(Qt.ItemDataRole.UserRole, name)
            self._list.addItem(item)
        self._text = QTextBrowser()
        self._text.setOpenLinks(False)
        self._text.setAccessibleName("Help")
        self._text.document().setDocumentMargin(20)
        self._text.anchorClicked.connect(self._on_link)
        split = QSplitter()
        split.addWidget(self._list)
        split.addWidget(self._text)
        split.setSizes([250, 610])
        layout = QVBoxLayout(self)
        layout.addWidget(split)
        self._list.currentRowChanged.connect(self._on_row)
        self.show_page(page)

    def show_page(self, page: str) -> None:
        """Turn to a page; an unknown one turns to the first."""
        names = [name for name, _ in HELP_PAGES]
        self._list.setCurrentRow(names.index(page) if page in names else 0)

    @Slot(int)
    def _on_row(self, row: int) -> None:
        dialect = QTextDocument.MarkdownFeature.MarkdownDialectGitHub
        document = self._text.document()
        document.setMarkdown(help_text(HELP_PAGES[row][0]), dialect)
        self._text.moveCursor(self._text.textCursor().MoveOperation.Start)

    @Slot(QUrl)
    def _on_link(self, link: QUrl) -> None:
        self.show_page(link.toString().removesuffix(".md"))
