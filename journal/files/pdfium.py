"""PDFs opened to be read, by one thread at a time."""

import threading
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

# The library may be called by one thread at a time, whatever the document.
_ONE_AT_A_TIME = threading.RLock()


@contextmanager
def opened_pdf(data: bytes) -> Iterator[Any]:
    """The document in ``data``; nobody else reads any while it is open.

    Raises:
        pypdfium2.PdfiumError: it is no sound PDF.
    """
    import pypdfium2

    with _ONE_AT_A_TIME:
        document = pypdfium2.PdfDocument(data)
        try:
            yield document
        finally:
            document.close()
