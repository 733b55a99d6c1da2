"""The two families of error: the world's fault, and a person's word to stop."""


class JournalError(Exception):
    """Something outside the program stands in the way: a file, a disk, a value typed wrong.

    The message is one plain sentence for the person, naming the thing and the reason.
    """


class ReadOnlyError(JournalError):
    """A change was asked of a journal that is open for reading only."""


class UndoRefusedError(JournalError):
    """An edit can't be taken back, since a row it touched has changed since."""


class Cancelled(Exception):  # noqa: N818 - not an error: the person asked for it
    """The person asked a long job to stop; what it finished stays."""
