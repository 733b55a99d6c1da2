"""The owner's signature: an Ed25519 key (RFC 8032), and what is made and verified with it."""

import hashlib
from typing import TYPE_CHECKING

from journal.domain.errors import JournalError

if TYPE_CHECKING:
    from cryptography.hazmat.primitives.asymmetric.ed25519 import (
        Ed25519PrivateKey,
        Ed25519PublicKey,
    )


def new_key() -> bytes:
    """A new private key, as PEM without a password."""
    from cryptography.hazmat.primitives import serialization as forms
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

    return Ed25519PrivateKey.generate().private_bytes(
        forms.Encoding.PEM, forms.PrivateFormat.PKCS8, forms.NoEncryption()
    )


def public_of(key: bytes) -> bytes:
    """The public half of a private key, as PEM.

    Raises:
        JournalError: it is no key of this kind.
    """
    from cryptography.hazmat.primitives import serialization as forms

    return (
        _private(key)
        .public_key()
        .public_bytes(forms.Encoding.PEM, forms.PublicFormat.SubjectPublicKeyInfo)
    )


def sign(key: bytes, data: bytes) -> bytes:
    """The signature over ``data``, 64 bytes.

    Raises:
        JournalError: it is no key of this kind.
    """
    return _private(key).sign(data)


def holds(public: bytes, signature: bytes, data: bytes) -> bool:
    """Whether a signature was made over ``data`` with the key that ``public`` is the half of.

    Raises:
        JournalError: it is no public key of this kind.
    """
    from cryptography.exceptions import InvalidSignature

    try:
        _public(public).verify(signature, data)
    except InvalidSignature:
        return False
    return True


def fingerprint(public: bytes) -> str:
    """The SHA-256 of the 32 bytes of a public key, in groups of four to be read out.

    Raises:
        JournalError: it is no public key of this kind.
    """
    digest = hashlib.sha256(_public(public).public_bytes_raw()).hexdigest()
    return " ".join(digest[at : at + 4] for at in range(0, len(digest), 4))


def _private(key: bytes) -> "Ed25519PrivateKey":
    from cryptography.exceptions import UnsupportedAlgorithm
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey
    from cryptography.hazmat.primitives.serialization import load_pem_private_key

    try:
        found = load_pem_private_key(key, password=None)
    except TypeError as error:
        raise JournalError("The key is locked with a password; unlock it first.") from error
    except (ValueError, UnsupportedAlgorithm) as error:
        raise JournalError("This is no private key in PEM.") from error
    if not isinstance(found, Ed25519PrivateKey):
        raise JournalError("This is a private key, but not an Ed25519 one.")
    return found


def _public(public: bytes) -> "Ed25519PublicKey":
    from cryptography.exceptions import UnsupportedAlgorithm
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PublicKey
    from cryptography.hazmat.primitives.serialization import load_pem_public_key

    try:
        found = load_pem_public_key(public)
    except (ValueError, UnsupportedAlgorithm) as error:
        raise JournalError("This is no public key in PEM.") from error
    if not isinstance(found, Ed25519PublicKey):
        raise JournalError("This is a public key, but not an Ed25519 one.")
    return found
