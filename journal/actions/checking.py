"""Checking: a journal, a bundle, or a single photo or page against a journal's originals."""

from pathlib import Path

from journal.actions import signing, stamping
from journal.actions.session import Session
from journal.domain.checks import BundleCheck, CheckReport, PictureCheck
from journal.domain.errors import JournalError
from journal.domain.progress import Context, Silent
from journal.store import checking
from journal.store.folder import holds_journal, open_folder

#: What a packed bundle ends in.
_PACKED = {".zip", ".tar"}


def check(journal: Session | Path, context: Context | None = None) -> CheckReport:
    """Look at all of a journal, open or not, and name each fault; nothing is changed.

    Raises:
        JournalError: it is no journal, or is too damaged to be opened.
        Cancelled: the person asked to stop.
    """
    if isinstance(journal, Session):
        return checking.check(journal.journal, context or Silent())
    with open_folder(journal, read_only=True) as opened:
        return checking.check(opened, context or Silent())


def check_bundle(
    path: Path, context: Context | None = None, authorities: tuple[Path, ...] = ()
) -> BundleCheck:
    """Look at all of a bundle, or of any bag, packed or not; nothing is unpacked or changed.

    ``authorities`` are files with certificates of time stamp authorities that the person trusts.

    Raises:
        JournalError: there is nothing there, it can't be read, or is no package.
        Cancelled: the person asked to stop.
    """
    # Cryptography is large, and most checks are of a journal.
    from journal.dossier.bundle import check as bundles
    from journal.dossier.bundle.stamps import read_certificates

    try:
        files = [path.read_bytes() for path in authorities]
    except OSError as error:
        said = error.strerror or str(error)
        raise JournalError(f"“{error.filename}” can't be read: {said}.") from error
    return bundles.check_bundle(
        path,
        context or Silent(),
        own_key=_own_key(),
        authorities=tuple(one for data in files for one in read_certificates(data)),
        replies=stamping.replies_beside(path),
    )


def check_path(
    path: Path,
    context: Context | None = None,
    *,
    journal: Session | Path | None = None,
    authorities: tuple[Path, ...] = (),
) -> CheckReport | BundleCheck | PictureCheck:
    """Check whatever lies at a path: a journal, a bundle, or a photo or PDF of ``journal``'s.

    Raises:
        JournalError: there is nothing there that can be checked.
        Cancelled: the person asked to stop.
    """
    from journal.actions.recognising import look_up

    try:
        is_folder, is_file = path.is_dir(), path.is_file()
    except (OSError, ValueError) as error:
        raise JournalError(f"“{path}” can't be read: {error}.") from error
    if not is_folder and not is_file:
        raise JournalError(f"There is nothing at “{path}”.")
    if is_folder and holds_journal(path):
        return check(path, context)
    if is_folder or path.suffix.lower() in _PACKED:
        return check_bundle(path, context, authorities)
    if journal is None:
        raise JournalError(
            f"“{path}” is neither a journal nor a bundle; to look a photo or a page up, say in "
            "which journal."
        )
    return look_up(journal, path, context)


def _own_key() -> str:
    try:
        return signing.fingerprint()
    except JournalError:
        # A damaged key of one's own is no matter of somebody else's bundle.
        return ""
