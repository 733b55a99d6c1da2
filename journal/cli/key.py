"""restoration-journal key: the key that bundles are signed with."""

from pathlib import Path

import click

from journal.actions import signing
from journal.cli.options import json_option
from journal.cli.output import answer, put, tell


@click.command("key")
@click.option(
    "--public",
    type=click.Path(readable=False, path_type=Path),
    help="Write the public key, which anybody may have, to this file.",
)
@click.option(
    "--export",
    "private",
    type=click.Path(readable=False, path_type=Path),
    help="Write the private key to this file, to be kept safe or taken to another computer.",
)
@click.option(
    "--bring",
    type=click.Path(readable=False, path_type=Path),
    help="Take over a private key from this file.",
)
@json_option
def command(public: Path | None, private: Path | None, bring: Path | None, as_json: bool) -> None:
    """Show the fingerprint of the key that bundles are signed with; it is made the first time.

    Whoever has the private key can sign as you; it never leaves this computer unless you export it.

    With --json: an object with fingerprint and path (of the private key).
    """
    if bring is not None:
        signing.bring_key(bring)
    signing.private_key()
    if public is not None:
        signing.export_key(public)
    if private is not None:
        signing.export_key(private, private=True)
        tell(f"{private}: whoever has this file can sign as you. Keep it where nobody else comes.")
    found = signing.fingerprint()
    if as_json:
        answer({"fingerprint": found, "path": str(signing.key_path())})
        return
    put(found)
    tell(f"The private key is kept in {signing.key_path()}.")
