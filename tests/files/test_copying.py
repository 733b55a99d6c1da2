import hashlib
import os

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from journal.files import copying
from journal.files.copying import CHUNK, SourceError, copy_and_hash, hash_file
from tests.files.faults import FullDisk

#: FIPS 180-4's own examples, as the National Institute of Standards and Technology publishes them.
FIPS_180 = {
    b"abc": "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
    b"": "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855",
}


@pytest.fixture
def staging(tmp_path):
    folder = tmp_path / "staging"
    folder.mkdir()
    return folder


@pytest.mark.parametrize(("content", "digest"), FIPS_180.items())
def test_the_digests_are_those_of_fips_180(tmp_path, staging, content, digest):
    source = tmp_path / "source"
    source.write_bytes(content)
    assert copy_and_hash(source, staging).sha256 == digest
    assert hash_file(source) == digest


@settings(
    max_examples=30, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(size=st.integers(0, 3 * CHUNK), keep_limit=st.sampled_from([0, CHUNK, 10 * CHUNK]))
def test_copy_digest_and_content_agree_for_every_size(tmp_path, staging, size, keep_limit):
    content = (b"0123456789abcdef" * (size // 16 + 1))[:size]
    source = tmp_path / "source"
    source.write_bytes(content)
    staged = copy_and_hash(source, staging, keep_limit=keep_limit)
    assert staged.path.read_bytes() == content
    assert staged.path.parent == staging
    assert staged.size == size
    assert staged.sha256 == hashlib.sha256(content).hexdigest()
    assert staged.data == (content if size <= keep_limit else None)
    staged.path.unlink()


def test_the_source_keeps_its_content_and_its_time(tmp_path, staging):
    source = tmp_path / "source"
    source.write_bytes(b"picture")
    os.utime(source, (1_300_000_000, 1_300_000_000))
    staged = copy_and_hash(source, staging)
    assert staged.modified == 1_300_000_000
    assert source.read_bytes() == b"picture"
    assert source.stat().st_mtime == 1_300_000_000


def _when_reading(monkeypatch, act):
    """Let ``act`` happen to the source after its first chunk has been read."""
    real, done = copying._read, []

    def read(handle, room):
        count = real(handle, room)
        if not done:
            done.append(True)
            act()
        return count

    monkeypatch.setattr(copying, "_read", read)


@pytest.mark.parametrize("keep_limit", [0, 100 * CHUNK])
def test_a_source_that_shrinks_is_refused(tmp_path, staging, monkeypatch, keep_limit):
    source = tmp_path / "source"
    source.write_bytes(bytes(3 * CHUNK))
    _when_reading(monkeypatch, lambda: os.truncate(source, 2 * CHUNK))
    with pytest.raises(SourceError, match="ended before its length"):
        copy_and_hash(source, staging, keep_limit=keep_limit)
    assert not list(staging.iterdir())


@pytest.mark.parametrize("keep_limit", [0, 100 * CHUNK])
def test_a_source_that_grows_is_refused(tmp_path, staging, monkeypatch, keep_limit):
    source = tmp_path / "source"
    source.write_bytes(bytes(2 * CHUNK))
    _when_reading(monkeypatch, lambda: os.truncate(source, 4 * CHUNK))
    with pytest.raises(SourceError, match="changed while it was being read"):
        copy_and_hash(source, staging, keep_limit=keep_limit)
    assert not list(staging.iterdir())


def test_a_card_that_stops_reading_is_a_fault_of_the_source(tmp_path, staging, monkeypatch):
    source = tmp_path / "source"
    source.write_bytes(bytes(2 * CHUNK))

    def pull_out():
        raise OSError(5, "Input/output error")

    real = copying._read
    monkeypatch.setattr(copying, "_read", lambda h, r: real(_Broken(), r))
    with pytest.raises(SourceError, match="input/output error"):
        copy_and_hash(source, staging)
    assert not list(staging.iterdir())


class _Broken:
    def readinto(self, room):
        raise OSError(5, "Input/output error")


def test_a_full_disk_is_no_fault_of_the_source(tmp_path, staging, full_disk: FullDisk):
    source = tmp_path / "source"
    source.write_bytes(bytes(3 * CHUNK))
    for at in (1, 2, 3):
        full_disk.fill(at)
        with pytest.raises(OSError, match="No space left") as caught:
            copy_and_hash(source, staging)
        assert not isinstance(caught.value, SourceError)
        assert not list(staging.iterdir())


def test_what_is_no_file_is_refused(tmp_path, staging):
    with pytest.raises(SourceError, match="no such file"):
        copy_and_hash(tmp_path / "nowhere.jpg", staging)
    with pytest.raises(SourceError):
        copy_and_hash(tmp_path, staging)
    with pytest.raises(SourceError, match="null"):
        copy_and_hash(tmp_path / "a\0b", staging)


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no named pipes")
def test_a_named_pipe_does_not_hold_the_import_up(tmp_path, staging):
    pipe = tmp_path / "pipe.jpg"
    os.mkfifo(pipe)
    with pytest.raises(SourceError, match="not an ordinary file"):
        copy_and_hash(pipe, staging)
