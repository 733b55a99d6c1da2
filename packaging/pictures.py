"""Make the README's pictures: the years in motion and the pages, from the demo journal.

    python3 packaging/start.py --no-window     makes the demo journal
    python3 packaging/check.py --fast          makes the environment
    .venv/bin/python packaging/pictures.py     takes the pictures

They go to assets/pictures. Needs no screen.
"""

import os
import sys
import tempfile
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

ROOT = Path(__file__).resolve().parent.parent
DEMO = ROOT / "demo-journal" / "Halden Rook"
PICTURES = ROOT / "assets" / "pictures"
SIZE = (1280, 800)
#: Longer side of the moving picture in pixels; a README is to load quickly.
MOVING = 960
#: Picture -> page, theme it is shown in, and how long its threads may need, in milliseconds.
PAGES = {
    "drawing": ("Drawing", "light", 2500),
    "timeline": ("Timeline", "light", 2500),
    "areas": ("Areas", "light", 2500),
    "ledger": ("Ledger", "light", 3000),
    "charts": ("Ledger", "dark", 8000),
    "gaps": ("Gaps", "light", 2500),
    "dossier": ("Dossier", "light", 15000),
}


def main(target: Path = PICTURES) -> int:
    """Open the demo journal, visit every page, and save what is to be seen."""
    if not (DEMO / "journal.db").exists():
        sys.exit("There is no demo journal yet; run: python3 packaging/start.py --no-window")
    # The window is told of a home of its own, so that no one's settings show or change.
    with tempfile.TemporaryDirectory() as home:
        os.environ["XDG_CONFIG_HOME"] = home
        target.mkdir(parents=True, exist_ok=True)
        _move(target)
        return _take(target)


def _wait(milliseconds: int) -> None:
    """Let the window live for a while: thumbnails and sums arrive from their threads."""
    from PySide6.QtCore import QEventLoop, QTimer

    loop = QEventLoop()
    QTimer.singleShot(milliseconds, loop.quit)
    loop.exec()


def _move(target: Path, journal: Path = DEMO) -> None:
    """The drawing as it changed through the years, as a moving picture."""
    from journal.actions.export_years import export_years
    from journal.actions.journals import open_journal

    with open_journal(journal, read_only=True) as session:
        report = export_years(session, target / "years.gif", longest=MOVING)
    print(report.path)


def _take(target: Path) -> int:
    from journal.actions.drawings import find_panel
    from journal.actions.journals import open_journal
    from journal.desktop.app import make_app, make_window
    from journal.desktop.desk import AreaSelected, Nothing, PanelSelected, Selection
    from journal.domain.ids import AreaId

    app = make_app(["restoration-journal"])
    window = make_window(app)
    window.resize(*SIZE)
    window.show()
    # By a relative path, so that the strip at the bottom shows no folder of this computer.
    os.chdir(DEMO.parent)
    window.adopt(open_journal(Path(DEMO.name)))
    desk, workspace = window.desk, window.workspace
    assert desk is not None
    assert workspace is not None
    sill = find_panel(desk.session, "Sill, left").id
    shown: dict[str, Selection] = {
        "drawing": PanelSelected(sill),
        "areas": AreaSelected(AreaId(1)),
    }
    for name, (page, look, patience) in PAGES.items():
        window.dress(look)
        workspace.show_page(page)
        desk.select(shown.get(name, Nothing()))
        if name == "charts":
            desk.show_tab("Charts")
        _wait(patience)
        window.grab().save(str(target / f"{name}.png"))
        print(target / f"{name}.png")
    window.close()
    return 0


if __name__ == "__main__":
    sys.exit(main())
