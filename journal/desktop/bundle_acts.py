"""What the menu does about bundles and albums: make one, check one, have one stamped."""

from typing import TYPE_CHECKING

from journal.domain.errors import JournalError

# The dialogs are loaded when they are asked for: the window opens sooner.

if TYPE_CHECKING:
    from journal.desktop.window import Window
    from journal.domain.ids import PhotoId


def make_bundle(window: "Window") -> None:
    """Ask what goes into a bundle, and make it."""
    from journal.desktop.dialogs.bundle import BundleDialog

    if desk := window.desk:
        dialog = BundleDialog(desk, window)
        dialog.exec()
        dialog.deleteLater()


def make_album(window: "Window") -> None:
    """Ask whom the web album is for, and make it."""
    from journal.desktop.dialogs.album import AlbumDialog

    if desk := window.desk:
        dialog = AlbumDialog(desk, window)
        dialog.exec()
        dialog.deleteLater()


def check_bundle(window: "Window") -> None:
    """Ask for a bundle or a photo, check it, and show what was found."""
    from journal.desktop.desk import PhotosSelected
    from journal.desktop.dialogs.check_result import check_and_show
    from journal.desktop.dialogs.check_what import CheckWhatDialog

    def tell(error: Exception) -> None:
        if not isinstance(error, JournalError):
            raise error
        window.show_message(str(error), "error")

    def show_photo(photo: PhotoId) -> None:
        if desk := window.desk:
            desk.show_page("Timeline")
            desk.select(PhotosSelected((photo,)))

    chosen = CheckWhatDialog(window)
    chosen.exec()
    chosen.deleteLater()
    session = window.desk.session if window.desk else None
    if chosen.path is not None:
        check_and_show(
            window.tasks, chosen.path, session, window, tell, chosen.authorities, show_photo
        )


def stamp_bundle(window: "Window") -> None:
    """Ask for a bundle, and what is to be done about its time stamp."""
    from journal.desktop.dialogs.bundle_stamp import StampDialog
    from journal.desktop.dialogs.check_what import CheckWhatDialog

    chosen = CheckWhatDialog(window, stamp=True)
    chosen.exec()
    chosen.deleteLater()
    if window.desk is not None and chosen.path is not None:
        dialog = StampDialog(window.desk, chosen.path, window)
        dialog.exec()
        dialog.deleteLater()
