"""The dialog that changes a thing of the metalwork, whichever it is."""

from PySide6.QtWidgets import QWidget

from journal.desktop.desk import Desk
from journal.desktop.dialogs.anchor import AnchorDialog
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.dialogs.measure import MeasureDialog
from journal.desktop.dialogs.patch import PatchDialog
from journal.desktop.dialogs.seam import SeamDialog
from journal.domain.anchors import AnchorPoint
from journal.domain.patches import Patch
from journal.domain.readings import Measure
from journal.domain.seams import Seam


def edit_dialog(
    desk: Desk, thing: Seam | Patch | AnchorPoint | Measure, over: QWidget
) -> FormDialog:
    """The dialog of its kind, filled with what is recorded."""
    if isinstance(thing, Seam):
        return SeamDialog(desk, over, seam=thing)
    if isinstance(thing, Patch):
        return PatchDialog(desk, over, patch=thing)
    if isinstance(thing, AnchorPoint):
        return AnchorDialog(desk, over, anchor=thing)
    return MeasureDialog(desk, over, measure=thing)
