"""Bags made by hand for the tests, by RFC 8493, and packed in every way."""

import hashlib
import io
import tarfile
import zipfile
from collections.abc import Mapping
from pathlib import Path

DECLARED = b"BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n"


def bag_files(data: Mapping[str, bytes], **tags: bytes) -> dict[str, bytes]:
    """All files of a bag over the data given, each by its path in the bag."""
    lines = "".join(f"{hashlib.sha256(d).hexdigest()}  data/{p}\n" for p, d in data.items())
    files = {"bagit.txt": DECLARED, "manifest-sha256.txt": lines.encode()}
    files |= {f"data/{path}": content for path, content in data.items()}
    return files | {name.replace("_", "."): content for name, content in tags.items()}


def as_folder(folder: Path, files: Mapping[str, bytes]) -> Path:
    for path, content in files.items():
        place = folder / path
        place.parent.mkdir(parents=True, exist_ok=True)
        place.write_bytes(content)
    return folder


def as_zip(path: Path, files: Mapping[str, bytes], base: str = "bag/", **how: object) -> Path:
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED, **how) as archive:
        for name, content in files.items():
            archive.writestr(base + name, content)
    return path


def as_tar(path: Path, files: Mapping[str, bytes], base: str = "bag/", mode: str = "w") -> Path:
    with tarfile.open(path, mode) as archive:
        for name, content in files.items():
            info = tarfile.TarInfo(base + name)
            info.size = len(content)
            archive.addfile(info, io.BytesIO(content))
    return path
