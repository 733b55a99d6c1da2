"""Sizes of paper, and what of a page is left for print; all in millimetres."""

from dataclasses import dataclass

from journal.dossier.document import Dossier

#: The white at the left and right of a page.
MARGIN = 22.0


@dataclass(frozen=True, slots=True)
class PaperSize:
    """A sheet of paper: its name for the typesetter, its width and height."""

    name: str
    width: float
    height: float

    @property
    def measure(self) -> float:
        """The width between the margins."""
        return self.width - 2 * MARGIN


#: ISO 216, and ANSI/ASME Y14.1 as people call it.
_PAPERS = {
    "a4": PaperSize("a4", 210.0, 297.0),
    "letter": PaperSize("us-letter", 215.9, 279.4),
}


def paper_of(dossier: Dossier) -> PaperSize:
    """The paper that a dossier is chosen to be on."""
    return _PAPERS[dossier.choices.paper]
