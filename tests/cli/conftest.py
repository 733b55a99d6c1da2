"""Typing commands as a person does."""

from collections.abc import Callable

import pytest

from journal import cli

#: Gives exit status, what was answered, and what was said beside it.
Run = Callable[..., tuple[int, str, str]]


@pytest.fixture
def run(capsys: pytest.CaptureFixture[str]) -> Run:
    def typed(*arguments: object) -> tuple[int, str, str]:
        with pytest.raises(SystemExit) as left:
            cli.main([str(argument) for argument in arguments])
        out, err = capsys.readouterr()
        code = left.value.code
        assert isinstance(code, int)
        return code, out, err

    return typed
