import pytest

from journal.files import assets


def test_a_checkout_and_an_installed_program_find_the_same_file(tmp_path, monkeypatch):
    package = tmp_path / "journal"
    (tmp_path / "assets" / "fonts").mkdir(parents=True)
    (tmp_path / "assets" / "fonts" / "a.ttf").write_bytes(b"checkout")
    monkeypatch.setattr(assets, "_PACKAGE", package)
    assert assets.asset("fonts/a.ttf").read_bytes() == b"checkout"
    (package / "_assets" / "fonts").mkdir(parents=True)
    (package / "_assets" / "fonts" / "a.ttf").write_bytes(b"installed")
    assert assets.asset("fonts/a.ttf").read_bytes() == b"installed"


def test_a_missing_asset_is_named():
    with pytest.raises(FileNotFoundError, match=r"nothing/like\.this"):
        assets.asset("nothing/like.this")
