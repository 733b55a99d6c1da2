"""The command line, one module a command."""

import importlib
import os
import sys
from typing import Any

import click

from journal import __version__
from journal.domain.errors import Cancelled, JournalError

#: Command -> what it does, in the order of a restoration. The module has the command's name.
COMMANDS = {
    "new": "Make a new journal.",
    "add": "Add photos, and folders of them.",
    "photos": "List the photos.",
    "pin": "Pin a photo to a panel.",
    "receipt": "Record a receipt.",
    "sheet": "Bring in a spreadsheet or a bank's export.",
    "work": "Record hours.",
    "clock": "Clock on, and off again.",
    "people": "Say who is own and who is paid.",
    "survey": "Survey the car, and read what it may come to.",
    "wanted": "Plan the buying.",
    "panel": "Read everything ever done to a panel.",
    "find": "Find words anywhere.",
    "metal": "Read what was welded and let in.",
    "readings": "Read what was measured.",
    "costs": "Read what it cost.",
    "chart": "Draw what it cost, or the hours.",
    "index": "Bring in a price index.",
    "worth": "Say what the car is valued at.",
    "pair": "Lay an after photo over a before.",
    "claims": "Read what the record supports, and how well.",
    "gaps": "Read what the record lacks.",
    "drawing": "Take the drawing out, or bring an SVG file in.",
    "views": "Choose the photos of the whole car.",
    "private": "Say what is withheld from others.",
    "dossier": "Make the dossier as a PDF.",
    "album": "Make the web album, for any browser.",
    "export": "Take the record out as tables.",
    "bundle": "Make a bundle of dossier, record and originals.",
    "stamp": "Have a bundle stamped with the time.",
    "key": "Show the key that bundles are signed with.",
    "check": "Check that nothing was lost or altered.",
    "backup": "Copy the journal to a safe place.",
    "restore": "Make a journal out of a backup.",
    "demo": "Make the journal of a made-up car.",
}


class _Commands(click.Group):
    """Loads a command's module when it is asked for, so that each starts quickly."""

    def list_commands(self, ctx: click.Context) -> list[str]:  # noqa: ARG002
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:  # noqa: ARG002
        if cmd_name not in COMMANDS:
            return None
        module = importlib.import_module(f"journal.cli.{cmd_name}")
        command: click.Command = module.command
        return command

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:  # noqa: ARG002
        with formatter.section("Commands"):
            formatter.write_dl(list(COMMANDS.items()))


@click.group(cls=_Commands)
@click.version_option(__version__, prog_name="restoration-journal")
def commands() -> None:
    """A journal of the restoration of one old car.

    Without a command the window opens. Each command takes the journal's folder first. Answers go
    to standard output, progress and messages to standard error. Exit status: 0 done, 1 done in
    part with each failure named, 2 could not.
    """


def main(arguments: list[str] | None = None) -> None:
    """Run a command and exit with its status."""
    # Arguments may hold names that are not UTF-8; they are shown with marks instead of failing.
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="backslashreplace")
    sys.exit(_run(arguments))


def _run(arguments: list[str] | None) -> int:
    try:
        result: Any = commands.main(
            args=arguments, prog_name="restoration-journal", standalone_mode=False
        )
    except JournalError as error:
        from journal.cli.output import tell

        tell(str(error))
        return 2
    except Cancelled:
        click.echo("Stopped; what was finished is kept.", err=True)
        return 1
    except click.exceptions.Exit as leave:
        return leave.exit_code
    except click.ClickException as error:
        error.show()
        return 2
    except click.Abort:
        click.echo("Stopped.", err=True)
        return 2
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 2
    return result if isinstance(result, int) else 0
