"""Opening a piece of evidence where it can be looked at."""

from PySide6.QtWidgets import QWidget

from journal.actions import areas as area_actions
from journal.actions import evidence, hours
from journal.desktop.desk import Desk, MetalKind, MetalSelected, PhotosSelected, ReceiptSelected
from journal.desktop.dialogs.opening import open_dialog
from journal.domain.areas import Area
from journal.domain.evidence import Piece
from journal.domain.ids import PhotoId, ReadingId, ReceiptId


def open_piece(desk: Desk, piece: Piece, area: Area, over: QWidget) -> None:
    """Show the record behind a claim: a photo beside the page, a receipt in the Ledger ..."""
    if piece.kind == "photo":
        desk.select(PhotosSelected((PhotoId(piece.id),)))
    elif piece.kind == "receipt":
        desk.show_page("Ledger")
        desk.select(ReceiptSelected(ReceiptId(piece.id)))
    elif piece.kind == "reading":
        measure = desk.ask(evidence.measure_of, ReadingId(piece.id))
        if measure is not None:
            desk.show_page("Drawing")
            desk.select(MetalSelected(MetalKind.MEASURE, measure))
    elif not desk.read_only:
        _open_own_word(desk, piece, area, over)


def _open_own_word(desk: Desk, piece: Piece, area: Area, over: QWidget) -> None:
    """Open the form of what the owner said."""
    if piece.kind == "work":
        from journal.desktop.dialogs.hours import HoursDialog

        work = next((one for one in desk.ask(hours.work) or () if one.id == piece.id), None)
        if work is not None:
            open_dialog(HoursDialog(desk, over, work=work))
    elif piece.kind == "entry":
        from journal.desktop.dialogs.entry import EntryDialog

        entries = desk.ask(area_actions.entries) or ()
        entry = next((one for one in entries if one.id == piece.id), None)
        if entry is not None:
            open_dialog(EntryDialog(desk, over, entry=entry))
    elif piece.kind == "stage":
        from journal.desktop.dialogs.stage import StageDialog

        change = next((one for one in area.changes if one.id == piece.id), None)
        if change is not None:
            open_dialog(StageDialog(desk, area, over, change=change))
    else:
        from journal.desktop.dialogs.area import AreaDialog

        open_dialog(AreaDialog(desk, over, area=area))
