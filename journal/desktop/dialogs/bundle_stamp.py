"""A time stamp on a bundle: the request written, the reply brought back."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtWidgets import QDialog, QDialogButtonBox, QFileDialog, QVBoxLayout, QWidget

from journal.actions.stamping import Asked, Stamped, ask_for_stamp, bring_stamp
from journal.desktop.desk import Desk
from journal.desktop.widgets.parts import button, card, column, label, row

_WORDS = (
    "A time stamp authority can vouch that this bundle was there no later than now. It is sent a "
    "number worked out from the bundle, and nothing of what is in it. This program goes to no "
    "network: you take the request there and bring the reply back."
)
_ASK = (
    "Write the request, a small file ending in .tsq. Authorities say on their pages how they want "
    "it sent; some make a charge."
)
_BRING = (
    "Bring the reply back, a file ending in .tsr. It is verified and kept in the bundle, or beside "
    "it if it is packed, and in the journal. With the authority's own certificate it is also "
    "verified whom it is from."
)


class StampDialog(QDialog):
    """Two steps, which may lie days apart.

    Attributes:
        ask_where, ask_reply, ask_certificate: ask for files; None for none.
    """

    def __init__(self, desk: Desk, bundle: Path, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("Time stamp")
        self.setMinimumWidth(600)
        self._desk, self._bundle = desk, bundle
        self._certificates: tuple[Path, ...] = ()
        self.ask_where: Callable[[Path], Path | None] = self._ask_where
        self.ask_reply: Callable[[], Path | None] = self._ask_reply
        self.ask_certificate: Callable[[], Path | None] = self._ask_certificate
        self.state = label("")
        self.state.hide()
        self.trusted = label("No certificate chosen.", "muted")
        more = "\N{HORIZONTAL ELLIPSIS}"
        self.ask_button = button(f"&Write the request{more}", self.ask, icon="take-out")
        self.bring_button = button(f"&Bring the reply{more}", self.bring, icon="done")
        certificate = button(f"&Certificate{more}", self.trust, role="quiet")
        asking, bringing = row(self.ask_button, None), row(self.bring_button, certificate, None)
        first = card(label("1. Ask", "subheading"), label(_ASK, "muted"))
        second = card(label("2. Bring back", "subheading"), label(_BRING, "muted"), self.trusted)
        for part, acts in ((first, asking), (second, bringing)):
            layout = part.layout()
            assert isinstance(layout, QVBoxLayout)
            layout.addLayout(acts)
        for act in (self.ask_button, self.bring_button):
            act.setEnabled(not desk.read_only)
        close = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        close.rejected.connect(self.reject)
        title = label(f"Time stamp on “{bundle.name}”", "heading")
        words = label(_WORDS, "muted")
        self.setLayout(
            column(title, words, first, second, self.state, close, spacing=12, margin=20)
        )

    def ask(self) -> None:
        """Ask for a file and write the request there."""
        out = self.ask_where(self._bundle.with_name(self._bundle.name + ".tsq"))
        if out is None:
            return
        session, bundle = self._desk.session, self._bundle
        self._desk.run(
            "Asking for a time stamp",
            lambda _context: ask_for_stamp(session, bundle, out),
            self._on_asked,
        )

    def bring(self) -> None:
        """Ask for the reply, verify it and keep it."""
        reply = self.ask_reply()
        if reply is None:
            return
        session, bundle, trusted = self._desk.session, self._bundle, self._certificates
        self._desk.run(
            "Verifying the time stamp",
            lambda _context: bring_stamp(session, bundle, reply, trusted),
            self._on_brought,
        )

    def trust(self) -> None:
        """Ask for a certificate of the authority's."""
        path = self.ask_certificate()
        if path is not None:
            self._certificates = (path,)
            self.trusted.setText(f"By the certificate {path.name}.")

    def _on_asked(self, asked: Asked) -> None:
        self._say(f"The request is {asked.path}. Take it to an authority.")

    def _on_brought(self, stamped: Stamped) -> None:
        found = stamped.found
        when = f"{found.made:%Y-%m-%d %H:%M:%S} UTC" if found.made else ""
        self._say(f"Stamped {when} by {found.authority}. {' '.join(found.said)}")

    def _say(self, words: str) -> None:
        self.state.setText(words)
        self.state.show()
        self._desk.message.emit(words, "done")

    def _ask_where(self, proposed: Path) -> Path | None:
        name, _ = QFileDialog.getSaveFileName(
            self, "Save the request as", str(proposed), "Time stamp request (*.tsq)"
        )
        return Path(name) if name else None

    def _ask_reply(self) -> Path | None:
        return self._ask_file("Which reply?", "Time stamp reply (*.tsr);;All files (*)")

    def _ask_certificate(self) -> Path | None:
        return self._ask_file(
            "Which certificate?", "Certificate (*.pem *.crt *.cer);;All files (*)"
        )

    def _ask_file(self, question: str, kinds: str) -> Path | None:
        name, _ = QFileDialog.getOpenFileName(self, question, str(self._bundle.parent), kinds)
        return Path(name) if name else None
