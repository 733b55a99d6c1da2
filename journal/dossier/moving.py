"""Pictures one after another as one moving picture."""

import io
from collections.abc import Sequence

from journal.domain.errors import JournalError

#: Kinds of file that move, by their ending.
MOVING = {".gif": "GIF", ".webp": "WEBP"}

#: So many colours are enough for a drawing of flat tints.
_COLOURS = 96


def moving(frames: Sequence[bytes], milliseconds: Sequence[int], kind: str) -> bytes:
    """PNG pictures of one size as a GIF or WEBP that runs for ever.

    Raises:
        JournalError: there are no pictures.
    """
    from PIL import Image

    if not frames:
        raise JournalError("There is nothing to move: no picture was made.")
    pictures = [Image.open(io.BytesIO(frame)).convert("RGB") for frame in frames]
    out = io.BytesIO()
    timing = {"duration": list(milliseconds), "loop": 0, "save_all": True}
    if kind == "GIF":
        # One palette for all: colours taken from the last frame and the first would flicker.
        tall = Image.new("RGB", (pictures[0].width, 2 * pictures[0].height))
        tall.paste(pictures[len(pictures) // 2], (0, 0))
        tall.paste(pictures[-1], (0, pictures[0].height))
        palette = tall.quantize(_COLOURS, Image.Quantize.MAXCOVERAGE)
        few = [p.quantize(palette=palette, dither=Image.Dither.NONE) for p in pictures]
        few[0].save(out, "GIF", append_images=few[1:], optimize=False, disposal=1, **timing)
    else:
        rest = pictures[1:]
        pictures[0].save(out, kind, append_images=rest, lossless=True, method=4, **timing)
    return out.getvalue()
