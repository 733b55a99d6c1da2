"""Time stamps by RFC 3161: a request to be taken to an authority, and its reply verified.

The program goes to no authority itself: the owner does, with any tool, and brings the reply back.
A stamp says that something existed no later than a moment; nothing of whether it is true.
"""

import hashlib
import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from journal.domain.checks import StampFound
from journal.domain.errors import JournalError

if TYPE_CHECKING:
    from cryptography.x509 import Certificate

#: No request or reply is larger, in bytes.
MOST = 1024 * 1024
_SHA256 = "2.16.840.1.101.3.4.2.1"


def new_request(data: bytes) -> bytes:
    """A request for a stamp over ``data``: its SHA-256, a fresh nonce, certificate wanted."""
    from rfc3161_client import HashAlgorithm, TimestampRequestBuilder

    builder = TimestampRequestBuilder(data, HashAlgorithm.SHA256, nonce=True, cert_req=True)
    return bytes(builder.build().as_bytes())


def imprint_of(request: bytes) -> str:
    """The SHA-256 that a request asks to have stamped, in hexadecimal.

    Raises:
        JournalError: these bytes are no request.
    """
    return bytes(_request(request).message_imprint.message).hex()


def read_certificates(data: bytes) -> "tuple[Certificate, ...]":
    """The certificates in a file, PEM or DER.

    Raises:
        JournalError: there is none in it.
    """
    from cryptography import x509

    try:
        if b"-----BEGIN" in data:
            return tuple(x509.load_pem_x509_certificates(data))
        return (x509.load_der_x509_certificate(data),)
    except ValueError as error:
        raise JournalError("The authority's file holds no certificate (PEM or DER).") from error


@dataclass(frozen=True, slots=True)
class _Reply:
    """A reply read, with the certificates that came in it."""

    parsed: Any
    enclosed: "tuple[Certificate, ...]"

    def signer(self) -> str:
        """The name of who signed it, as its certificate has it."""
        infos = list(self.parsed.signed_data.signer_infos)
        for one in self.enclosed:
            if infos and one.serial_number == infos[0].serial_number:
                return str(one.subject.rfc4514_string())
        return str(infos[0].issuer.rfc4514_string()) if infos else ""


def verify(
    name: str,
    reply: bytes,
    data: bytes,
    request: bytes | None = None,
    authorities: "tuple[Certificate, ...]" = (),
) -> StampFound:
    """Hold a reply against what was to be stamped, its request, and certificates that are trusted.

    Without ``authorities`` the certificates enclosed must do: the reply is then known to be whole,
    not to be from whom it says.
    """
    try:
        return _verified(name, reply, data, request, authorities)
    except Exception as error:
        said = f"It is no reply of a time stamp authority, or is damaged ({error})."
        return StampFound(name, None, "", good=False, trusted=False, said=(said,))


def _verified(
    name: str,
    reply: bytes,
    data: bytes,
    request: bytes | None,
    authorities: "tuple[Certificate, ...]",
) -> StampFound:
    parsed = _parsed(reply)
    if parsed.status not in (0, 1):
        words = "; ".join(map(str, parsed.status_string or ())) or f"status {parsed.status}"
        refusal = f"The authority refused to stamp it ({words})."
        return StampFound(name, None, "", good=False, trusted=False, said=(refusal,))
    read = _Reply(parsed, _enclosed(parsed))
    made, who = read.parsed.tst_info.gen_time, read.signer()
    wrong = tuple(_mismatches(read.parsed, data, request))
    if wrong:
        return StampFound(name, made, who, good=False, trusted=False, said=wrong)
    holds, words = _signature(read, data, authorities)
    said = (words, *_not_known(request, authorities, who))
    trusted = holds is True and bool(authorities)
    return StampFound(name, made, who, holds is not False, trusted, said)


def _mismatches(reply: Any, data: bytes, request: bytes | None) -> Iterator[str]:
    imprint = reply.tst_info.message_imprint
    if imprint.hash_algorithm.dotted_string != _SHA256:
        yield "It stamps a digest other than SHA-256, which was not asked for."
    elif bytes(imprint.message) != hashlib.sha256(data).digest():
        yield "It stamps something else: the SHA-256 in it is not this bundle's."
    if request is not None and reply.tst_info.nonce != _request(request).nonce:
        yield "It answers another request: the nonce is not the one that was asked with."


def _signature(
    read: _Reply, data: bytes, authorities: "tuple[Certificate, ...]"
) -> tuple[bool | None, str]:
    """Whether the authority's signature holds, None where that can't be told, and a sentence."""
    from rfc3161_client import VerificationError, VerifierBuilder

    ends = [one for one in read.enclosed if one.issuer == one.subject]
    roots = list(authorities) or ends
    if not roots:
        return None, (
            "It stamps this very bundle, but its signature was not verified: that needs the "
            "authority's certificate, which did not come with it and was not given."
        )
    between = [one for one in read.enclosed if one not in roots]
    verifier = VerifierBuilder(roots=roots, intermediates=between).build()
    try:
        verifier.verify_message(read.parsed, data)
    except (VerificationError, ValueError) as error:
        whom = "the certificate given" if authorities else "the certificates enclosed"
        return False, f"Its signature does not hold by {whom}: {_words(error)}."
    return True, "It stamps this very bundle, and its signature holds."


def _words(error: Exception) -> str:
    """The point of an error of OpenSSL's, which comes wrapped in places and codes."""
    said = str(error)
    found = re.findall(r'data: "(?:Verify error: )?([^"]+)"|reason: "([^"]+)"', said)
    points = [one or other for one, other in found]
    return points[-1] if points else said.rstrip(".")


def _not_known(
    request: bytes | None, authorities: "tuple[Certificate, ...]", who: str
) -> Iterator[str]:
    if request is None:
        yield "The request it answers is not here, so its nonce was not compared."
    if not authorities:
        yield (
            f"Whether it really is from “{who}” was not checked: no certificate of the authority "
            "was given."
        )


def _request(data: bytes) -> Any:
    from rfc3161_client import _rust

    try:
        return _rust.parse_timestamp_request(data)
    except ValueError as error:
        raise JournalError(f"This is no time stamp request ({error}).") from error


def _parsed(reply: bytes) -> Any:
    from rfc3161_client import decode_timestamp_response

    if len(reply) > MOST:
        raise ValueError("it is too large")
    try:
        return decode_timestamp_response(reply)
    except ValueError:
        # Common authorities don't sort the enclosed certificates as DER wants it; nothing is signed
        # of their order.
        return decode_timestamp_response(_with_sorted_certificates(reply))


def _enclosed(parsed: Any) -> "tuple[Certificate, ...]":
    from cryptography import x509

    found = parsed.signed_data.certificates
    return tuple(x509.load_der_x509_certificate(one) for one in found)


def _with_sorted_certificates(reply: bytes) -> bytes:
    """The same reply with its SET of certificates in the order that DER asks for (X.690, 11.6)."""
    whole = _inside(reply, 0)
    _status, content = _parts(reply, *whole)[:2]
    _kind, explicit = _parts(reply, *content)[:2]
    (signed,) = _parts(reply, *explicit)
    for start, end in _parts(reply, *signed):
        # [0], as RFC 5652 numbers the certificates among the parts of SignedData.
        if reply[_head(start, end)] == 0xA0:
            parts = _parts(reply, start, end)
            raw = sorted(reply[_head(a, b) : b] for a, b in parts)
            return reply[:start] + b"".join(raw) + reply[end:]
    return reply


def _inside(data: bytes, at: int) -> tuple[int, int]:
    """Where the content of the element at ``at`` begins and ends."""
    first = data[at + 1]
    if first < 0x80:
        return at + 2, at + 2 + first
    count = first & 0x7F
    length = int.from_bytes(data[at + 2 : at + 2 + count], "big")
    start = at + 2 + count
    if start + length > len(data):
        raise ValueError("it ends too soon")
    return start, start + length


def _parts(data: bytes, start: int, end: int) -> list[tuple[int, int]]:
    """The contents of the elements that lie one after another between two places."""
    found = []
    while start < end:
        inner = _inside(data, start)
        found.append(inner)
        start = inner[1]
    return found


def _head(start: int, end: int) -> int:
    """Where an element begins whose content lies between two places."""
    length = end - start
    extra = 0 if length < 0x80 else (length.bit_length() + 7) // 8
    return start - 2 - extra
