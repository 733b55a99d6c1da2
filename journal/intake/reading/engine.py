"""Reading pictures of print: one small interface over an engine that may not be installed."""

import importlib.util
import logging
import threading
from typing import Any, Protocol

from journal.domain.papers import Box
from journal.domain.pictures import Picture
from journal.intake.reading.layout import Word

#: The longer side that pictures are read at, pixels; print on a till roll is legible down to it.
_LONGEST = 1280
_SHORTEST = 64
#: Words read less surely than this are noise.
_LEAST_SURE = 0.5
#: One of two cores is the window's.
_THREADS = 1


class Reader(Protocol):
    """What reads the words in a picture."""

    def words(self, picture: Picture) -> tuple[Word, ...]:
        """The words of an upright picture."""


def can_read_pictures() -> bool:
    """Whether the engine for pictures is installed; nothing is loaded to know."""
    return all(importlib.util.find_spec(name) for name in ("rapidocr", "onnxruntime"))


def reader() -> Reader | None:
    """The engine, loaded on first use and kept; None where it isn't installed."""
    global _kept  # noqa: PLW0603, RUF100 - a second engine would cost 300 MB more
    with _LOADING:
        if _kept is None and can_read_pictures():
            _kept = _RapidReader()
        return _kept


class _RapidReader:
    """RapidOCR with its models from inside its wheel."""

    def __init__(self) -> None:
        logging.getLogger("RapidOCR").setLevel(logging.ERROR)
        from rapidocr import RapidOCR

        self._one_at_a_time = threading.Lock()
        self._engine: Any = RapidOCR(
            params={
                "Global.max_side_len": _LONGEST,
                "Global.use_cls": False,
                "Global.log_level": "error",
                "Det.limit_side_len": _SHORTEST,
                "Det.limit_type": "min",
                "EngineConfig.onnxruntime.intra_op_num_threads": _THREADS,
                "EngineConfig.onnxruntime.inter_op_num_threads": _THREADS,
            }
        )

    def words(self, picture: Picture) -> tuple[Word, ...]:
        import numpy as np

        rgb = np.frombuffer(picture.rgb, np.uint8).reshape(picture.height, picture.width, 3)
        with self._one_at_a_time:
            found = self._engine(np.ascontiguousarray(rgb[:, :, ::-1]))
        if found.boxes is None or found.txts is None:
            return ()
        read = zip(found.boxes, found.txts, found.scores, strict=True)
        return tuple(
            _word(corners, text, float(sure), picture)
            for corners, text, sure in read
            if text.strip() and sure >= _LEAST_SURE
        )


_LOADING = threading.Lock()
_kept: Reader | None = None


def _word(corners: Any, text: str, sure: float, picture: Picture) -> Word:
    """A word with its box in parts of the picture, and the slope of its upper and lower edge."""
    across = [float(x) / picture.width for x, _ in corners]
    down = [float(y) / picture.height for _, y in corners]
    run = (across[1] - across[0]) + (across[2] - across[3])
    fall = (down[1] - down[0]) + (down[2] - down[3])
    slope = fall / run if run > 0 else 0.0
    box = Box(min(across), min(down), max(across), max(down))
    return Word(text.strip(), box, sure, slope)
