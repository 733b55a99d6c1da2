"""The owner's key: made once on this computer, kept there, and used to sign bundles."""

from pathlib import Path

from platformdirs import user_config_path

from journal.domain.errors import JournalError
from journal.dossier.bundle import signature
from journal.files.durable import make_folder, write_atomically

#: No key file is larger, in bytes.
_MOST = 64 * 1024


def key_path() -> Path:
    """Where the private key is kept."""
    return user_config_path("restoration-journal", appauthor=False) / "signing-key.pem"


def has_key() -> bool:
    """Whether there is a key on this computer."""
    return key_path().is_file()


def private_key() -> bytes:
    """The private key as PEM, made where there is none yet.

    Raises:
        JournalError: it can't be read or kept, or is damaged.
    """
    path = key_path()
    if not path.exists():
        key = signature.new_key()
        try:
            make_folder(path.parent)
            write_atomically(path, key, private=True)
        except OSError as error:
            raise JournalError(f"The key can't be kept at “{path}”: {_why(error)}.") from error
        return key
    key = _read(path)
    try:
        signature.public_of(key)
    except JournalError as error:
        raise JournalError(f"“{path}” is damaged or no key: {error}") from error
    return key


def public_key() -> bytes:
    """The public half as PEM; the key is made where there is none yet.

    Raises:
        JournalError: it can't be read or kept.
    """
    return signature.public_of(private_key())


def fingerprint() -> str:
    """The fingerprint of the key on this computer, "" where there is none yet.

    Raises:
        JournalError: it can't be read, or is damaged.
    """
    return signature.fingerprint(public_key()) if has_key() else ""


def key_line() -> str:
    """A line on the owner's key for a dossier, "" where there is no key yet."""
    found = fingerprint()
    return f"Ed25519 key with the fingerprint {found} (SHA-256)" if found else ""


def export_key(out: Path, *, private: bool = False) -> None:
    """Write the public key to a file, or the private one, which only its owner may ever have.

    Raises:
        JournalError: there is something at ``out``, or it can't be written.
    """
    if out.exists():
        raise JournalError(f"“{out}” exists already.")
    data = private_key() if private else public_key()
    try:
        write_atomically(out, data, private=private)
    except OSError as error:
        raise JournalError(f"The key can't be written to “{out}”: {_why(error)}.") from error


def bring_key(source: Path) -> str:
    """Take over a private key from another computer; its fingerprint.

    Raises:
        JournalError: it is no such key, or there is another one here already.
    """
    key = _read(source)
    found = signature.fingerprint(signature.public_of(key))
    if has_key() and fingerprint() != found:
        raise JournalError(
            f"There is another key on this computer already, “{key_path()}”; move it away first."
        )
    try:
        make_folder(key_path().parent)
        write_atomically(key_path(), key, private=True)
    except OSError as error:
        raise JournalError(f"The key can't be kept at “{key_path()}”: {_why(error)}.") from error
    return found


def _read(path: Path) -> bytes:
    try:
        with path.open("rb") as stream:
            return stream.read(_MOST)
    except OSError as error:
        raise JournalError(f"The key “{path}” can't be read: {_why(error)}.") from error


def _why(error: OSError) -> str:
    return error.strerror or str(error)
