"""The menus: every act by name, with its key."""

from collections import defaultdict
from collections.abc import Callable, Sequence
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject
from PySide6.QtGui import QAction, QActionGroup, QKeySequence
from PySide6.QtWidgets import QMenu

from journal.desktop import bundle_acts, icons
from journal.desktop.pages.registry import PAGES
from journal.desktop.theme import Choice

if TYPE_CHECKING:
    from journal.desktop.acts import Acts
    from journal.desktop.window import Window

#: What a menu entry needs before it can be used.
ALWAYS, OPEN, WRITABLE = "always", "open", "writable"


class Menus(QObject):
    """The menu bar of the window.

    Attributes:
        actions: every entry by its plain name.
    """

    def __init__(self, window: "Window", acts: "Acts") -> None:
        super().__init__(window)
        self._window = window
        self._acts = acts
        self._needs: list[tuple[QAction, str]] = []
        self._icons: defaultdict[QMenu, list[tuple[QAction, str]]] = defaultdict(list)
        self.actions: dict[str, QAction] = {}
        self._build_journal()
        self._build_edit()
        self._build_view()
        self._build_record()
        self._build_help()
        for menu in self._icons:
            menu.aboutToShow.connect(partial(self._draw_icons, menu))

    def show_state(self, *, is_open: bool, is_writable: bool) -> None:
        """Enable what can be done now."""
        for action, needs in self._needs:
            action.setEnabled(
                needs == ALWAYS or (needs == OPEN and is_open) or (is_open and is_writable)
            )

    def show_undo(self, undo: str | None, redo: str | None) -> None:
        """Name what undo and redo would do; None where there is nothing."""
        for name, label in (("Undo", undo), ("Redo", redo)):
            action = self.actions[name]
            action.setEnabled(label is not None)
            action.setText(f"&{name}: {label.replace('&', '&&')}" if label else f"&{name}")

    def show_recent(self, folders: Sequence[str]) -> None:
        """Fill the submenu of journals opened last."""
        self._recent.clear()
        for number, folder in enumerate(folders, start=1):
            action = self._recent.addAction(f"&{number} {Path(folder).name}")
            action.setToolTip(folder)
            action.setStatusTip(folder)
            action.triggered.connect(partial(self._acts.open_folder, Path(folder)))
        self._recent.setEnabled(bool(folders))

    def mark_page(self, title: str) -> None:
        """Tick the page in front."""
        self.actions[title].setChecked(True)

    def mark_theme(self, choice: str) -> None:
        """Tick the theme in use."""
        self.actions[f"theme {choice}"].setChecked(True)

    def _build_journal(self) -> None:
        menu = self._window.menuBar().addMenu("&Journal")
        self._add(menu, "&New journal\N{HORIZONTAL ELLIPSIS}", self._acts.new_journal, "Ctrl+N")
        self._add(menu, "&Open\N{HORIZONTAL ELLIPSIS}", self._acts.choose_and_open, "Ctrl+O")
        self._recent = menu.addMenu("Open &recent")
        self._add(menu, "Make the &demo journal\N{HORIZONTAL ELLIPSIS}", self._acts.make_demo)
        menu.addSeparator()
        add = "Add &photos\N{HORIZONTAL ELLIPSIS}"
        self._add(menu, add, self._acts.choose_and_add, "Ctrl+I", WRITABLE, "add-photos")
        folder = "Add a &folder of photos\N{HORIZONTAL ELLIPSIS}"
        self._add(menu, folder, self._acts.choose_folder_and_add, "Ctrl+Shift+I", WRITABLE)
        menu.addSeparator()
        car = "&Car\N{HORIZONTAL ELLIPSIS}"
        self._add(menu, car, self._acts.edit_car, "", OPEN, "car")
        stones = "&Milestones\N{HORIZONTAL ELLIPSIS}"
        self._add(menu, stones, self._acts.edit_milestones, "", OPEN, "milestone")
        out = "&Take the drawing out\N{HORIZONTAL ELLIPSIS}"
        self._add(menu, out, self._acts.take_drawing_out, "Ctrl+E", OPEN, "take-out")
        tables = "E&xport tables\N{HORIZONTAL ELLIPSIS}"
        self._add(menu, tables, self._acts.export_tables, "", OPEN)
        sheet = "Brin&g a spreadsheet in\N{HORIZONTAL ELLIPSIS}"
        self._add(menu, sheet, self._acts.bring_sheet_in, "", WRITABLE)
        into = "Br&ing an SVG file in\N{HORIZONTAL ELLIPSIS}"
        self._add(menu, into, self._acts.bring_svg_in, "", WRITABLE)
        menu.addSeparator()
        self._build_keeping(menu)
        menu.addSeparator()
        self._add(menu, "Clo&se the journal", self._window.close_journal, "Ctrl+W", OPEN)
        self._add(menu, "&Quit", self._window.close, "Ctrl+Q")

    def _build_keeping(self, menu: QMenu) -> None:
        """What keeps the record safe and proves it: bundles, checks, backups."""
        for text, act, needs, icon in (
            ("Make the &web album", bundle_acts.make_album, OPEN, ""),
            ("Make the b&undle", bundle_acts.make_bundle, OPEN, "bundle"),
            ("Time st&amp on a bundle", bundle_acts.stamp_bundle, WRITABLE, ""),
            ("C&heck a bundle or photo", bundle_acts.check_bundle, ALWAYS, ""),
        ):
            name = f"{text}\N{HORIZONTAL ELLIPSIS}"
            self._add(menu, name, partial(act, self._window), "", needs, icon)
        self._add(menu, "Chec&k the journal", self._acts.check, "", OPEN, "check")
        backup = "&Back up\N{HORIZONTAL ELLIPSIS}"
        self._add(menu, backup, self._acts.back_up, "", OPEN, "backup")
        restore = "R&estore from a backup\N{HORIZONTAL ELLIPSIS}"
        self._add(menu, restore, self._acts.restore, "", ALWAYS, "restore")
        clear = "C&lear out removed originals\N{HORIZONTAL ELLIPSIS}"
        self._add(menu, clear, self._acts.clear_out, "", WRITABLE)

    def _build_edit(self) -> None:
        menu = self._window.menuBar().addMenu("&Edit")
        self._add(menu, "&Undo", self._acts.undo, "Ctrl+Z", WRITABLE, "undo")
        self._add(menu, "&Redo", self._acts.redo, "Ctrl+Shift+Z", WRITABLE, "redo")
        menu.addSeparator()
        find = self._add(menu, "&Find", self._acts.find, "Ctrl+F", OPEN, "find")
        find.setToolTip("Find words anywhere in the journal")
        self._add(menu, "&History", self._acts.show_history, "Ctrl+H", OPEN, "history")

    def _build_view(self) -> None:
        menu = self._window.menuBar().addMenu("&View")
        pages = QActionGroup(self)
        for number, entry in enumerate(PAGES, start=1):
            show = partial(self._acts.show_page, entry.title)
            name = f"&{number} {entry.title}"
            action = self._add(menu, name, show, f"Ctrl+{number}", OPEN, entry.icon)
            self.actions[entry.title] = action
            action.setCheckable(True)
            pages.addAction(action)
        menu.addSeparator()
        self._add(menu, "Show or hide what &is selected", self._acts.toggle_inspector, "F4", OPEN)
        self._add(menu, "Next part of the &window", self._acts.next_part, "F6", OPEN)
        menu.addSeparator()
        themes = QActionGroup(self)
        choices: tuple[tuple[Choice, str], ...] = (
            ("system", "Colours of the &system"),
            ("light", "&Light"),
            ("dark", "&Dark"),
        )
        for choice, name in choices:
            action = self._add(menu, name, partial(self._acts.set_theme, choice))
            self.actions[f"theme {choice}"] = action
            action.setCheckable(True)
            themes.addAction(action)

    def _build_record(self) -> None:
        menu = self._window.menuBar().addMenu("&Record")
        for name, act, keys, icon in (
            ("New repair &area", self._acts.new_area, "Ctrl+Shift+A", "new-area"),
            ("New &receipt", self._acts.new_receipt, "Ctrl+Shift+R", "receipt"),
            ("&Hours", self._acts.new_hours, "Ctrl+Shift+H", "hours"),
            ("Hours &from photos", self._acts.photo_hours, "", "sitting"),
            ("&People", self._acts.edit_people, "", "hours"),
            ("Pairs &before and after", self._acts.find_pairs, "", "before-after"),
            ("New &wanted part", self._acts.new_wanted, "Ctrl+Shift+W", "wanted"),
            ("New &entry", self._acts.new_entry, "Ctrl+Shift+E", "entry"),
        ):
            self._add(menu, f"{name}\N{HORIZONTAL ELLIPSIS}", act, keys, WRITABLE, icon)
        menu.addSeparator()
        line = self._add(menu, "Hours in one &line", self._acts.quick_hours, "Ctrl+L", WRITABLE)
        line.setToolTip("3h weld sill left with Nils yesterday")
        clock = "&Clock on or off\N{HORIZONTAL ELLIPSIS}"
        self._add(menu, clock, self._acts.press_clock, "Ctrl+K", WRITABLE, "hours")

    def _build_help(self) -> None:
        menu = self._window.menuBar().addMenu("&Help")
        self._add(menu, "&Help", self._acts.show_help, "F1", ALWAYS, "help")
        self._add(menu, "&Keys", partial(self._acts.show_help, "keys"))
        self._add(menu, "&Cautions", partial(self._acts.show_help, "cautions"), icon="warning")
        self._add(menu, "&About", self._acts.show_about)

    def _draw_icons(self, menu: QMenu) -> None:
        """Draw a menu's icons when it is first opened: the window opens sooner without them."""
        for action, icon in self._icons.pop(menu, ()):
            icons.put(action, icon)

    def _add(
        self,
        menu: QMenu,
        text: str,
        act: Callable[[], object],
        keys: str = "",
        needs: str = ALWAYS,
        icon: str = "",
    ) -> QAction:
        action = QAction(text, self)
        if keys:
            action.setShortcut(QKeySequence(keys))
        if icon:
            self._icons[menu].append((action, icon))
        action.triggered.connect(lambda: act())
        menu.addAction(action)
        self._needs.append((action, needs))
        self.actions[text.replace("&", "").rstrip("\N{HORIZONTAL ELLIPSIS}")] = action
        return action
