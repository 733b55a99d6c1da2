"""Papers of the made-up receipts: invoices, till rolls and handwritten notes, drawn and scanned."""

import zlib
from datetime import datetime
from decimal import Decimal
from io import BytesIO

import numpy as np
from PIL import Image, ImageDraw, ImageFont, ImageOps

from journal.demo.noise import clouds
from journal.demo.story import LineStory, ReceiptStory

Ink = tuple[int, int, int]

_INK: Ink = (38, 38, 44)
_PEN: Ink = (30, 48, 120)

#: Suppliers who sent their invoice as a PDF.
_ELECTRONIC = ("Lumley Looms", "Lindhaga Bildelar", "Rook Register spares")


class _Page:
    """A sheet with a writing position that runs down it."""

    def __init__(self, width: int, height: int) -> None:
        self.image = Image.new("L", (width, height), 255)
        self.draw = ImageDraw.Draw(self.image)
        self.y = 0.0

    def text(self, x: float, words: str, size: int, *, right: bool = False) -> None:
        """Write words at ``x`` on the line, or ending there."""
        font = ImageFont.load_default(size)
        if right:
            x -= self.draw.textlength(words, font)
        self.draw.text((x, self.y), words, fill=0, font=font)

    def centred(self, words: str, size: int) -> None:
        """Write words in the middle of the line."""
        width = self.draw.textlength(words, ImageFont.load_default(size))
        self.text((self.image.width - width) / 2, words, size)

    def rule(self, left: float, right: float) -> None:
        """A line across."""
        self.draw.line((left, self.y, right, self.y), fill=0, width=2)


def _amount(minor: int) -> str:
    return f"{Decimal(minor) / 100:,.2f}"


def _per_piece(line: LineStory) -> str:
    return _amount(int(line.amount / line.quantity))


def _number(receipt: ReceiptStory) -> int:
    """The number the supplier gave it."""
    return 10000 + zlib.crc32(f"{receipt.supplier}{receipt.day}".encode()) % 80000


def _invoice(receipt: ReceiptStory) -> Image.Image:
    page = _Page(1000, 1414)
    page.y = 90
    page.text(90, receipt.supplier, 38)
    page.y = 142
    page.text(90, receipt.town, 20)
    page.y = 190
    page.rule(90, 910)
    page.y = 250
    page.text(90, "R. Mellgard", 24)
    page.text(910, f"Invoice {_number(receipt)}", 24, right=True)
    page.y = 284
    page.text(90, "Upper Mill Lane 4", 24)
    page.text(910, f"{receipt.day:%d.%m.%Y}", 24, right=True)
    page.y = 400
    for x, words in ((90, "Qty"), (160, "Description")):
        page.text(x, words, 20)
    page.text(740, "Each", 20, right=True)
    page.text(910, receipt.currency, 20, right=True)
    page.y = 430
    page.rule(90, 910)
    for line in receipt.lines:
        page.y += 22
        page.text(90, f"{line.quantity}", 22)
        page.text(160, line.text[:46], 22)
        page.text(740, _per_piece(line), 22, right=True)
        page.text(910, _amount(line.amount), 22, right=True)
        page.y += 26
    page.y += 30
    page.rule(560, 910)
    page.y += 18
    total = sum(line.amount for line in receipt.lines)
    page.text(560, "Total", 28)
    page.text(910, f"{receipt.currency} {_amount(total)}", 28, right=True)
    page.y = 1290
    page.rule(90, 910)
    page.y = 1304
    page.text(90, "Thank you. Payable within 14 days.", 18)
    return page.image


def _till(receipt: ReceiptStory) -> Image.Image:
    page = _Page(520, 470 + 66 * len(receipt.lines))
    page.y = 34
    page.centred(receipt.supplier, 30)
    page.y = 78
    page.centred(receipt.town, 22)
    page.y = 122
    page.text(40, f"{receipt.day:%d.%m.%Y}", 22)
    page.text(480, f"No {_number(receipt) % 10000:04d}", 22, right=True)
    page.y = 166
    page.rule(40, 480)
    for line in receipt.lines:
        page.y += 12
        page.text(40, line.text[:34], 22)
        page.y += 28
        page.text(60, f"{line.quantity} x {_per_piece(line)}", 20)
        page.text(480, _amount(line.amount), 22, right=True)
        page.y += 24
    page.y += 22
    page.rule(40, 480)
    page.y += 14
    total = sum(line.amount for line in receipt.lines)
    page.text(40, f"TOTAL {receipt.currency}", 32)
    page.text(480, _amount(total), 32, right=True)
    page.y += 74
    page.centred("* * *   thank you   * * *", 20)
    return page.image


def _note(receipt: ReceiptStory) -> Image.Image:
    page = _Page(900, 640)
    for y in range(60, 640, 52):
        page.draw.line((0, y, 900, y), fill=212, width=1)
    page.y = 66
    page.text(560, f"{receipt.town}, {receipt.day:%d.%m.%Y}", 26)
    page.y = 170
    page.text(70, "Received from R. Mellgard", 32)
    for line in receipt.lines:
        page.y += 52
        page.text(70, f"for {line.text}", 30)
        page.text(840, _amount(line.amount), 30, right=True)
    page.y += 70
    total = sum(line.amount for line in receipt.lines)
    page.text(70, f"paid in cash, {receipt.currency} {_amount(total)}", 32)
    page.y += 80
    words = receipt.supplier.split(",")[0]
    leaning = Image.new("L", (420, 90))
    ImageDraw.Draw(leaning).text((60, 20), words, fill=255, font=ImageFont.load_default(34))
    leaning = leaning.transform(
        leaning.size, Image.Transform.AFFINE, (1, 0.35, -16, 0, 1, 0), Image.Resampling.BILINEAR
    )
    page.image.paste(0, (460, int(page.y)), leaning)
    return page.image


def _scanned(sheet: Image.Image, ink: Ink, seed: int) -> Image.Image:
    """The sheet as it lay on the scanner: creased, a little yellow, not quite straight."""
    width, height = sheet.size
    stain = np.tile(clouds()[seed % 300 :, seed % 200 :], (2, 2))[:height, :width] * np.float32(2.2)
    fold = -16 * np.exp(-(((np.arange(height, dtype=np.float32) - height * 0.5) / 3) ** 2))
    shade = np.clip(
        np.asarray(sheet).astype(np.float32) - 6 + stain + fold[:, None], 0, 255
    ).astype(np.uint8)
    bed = Image.new("L", (width + 60, height + 60), 206)
    bed.paste(Image.fromarray(shade), (30, 30))
    turned = bed.rotate((seed % 17 - 8) / 7, Image.Resampling.BILINEAR, fillcolor=206)
    return ImageOps.colorize(turned, black=ink, white=(252, 249, 240))


def paper(receipt: ReceiptStory) -> tuple[str, bytes] | None:
    """The file of a receipt's paper, its name and content; None where there is no paper."""
    if not receipt.form:
        return None
    draw = {"invoice": _invoice, "till": _till, "note": _note}[receipt.form]
    sheet = draw(receipt)
    name = f"{receipt.day:%Y-%m-%d} {receipt.supplier.split(',')[0].replace('.', '')}"
    seed = zlib.crc32(name.encode())
    store = BytesIO()
    if receipt.supplier in _ELECTRONIC:
        moment = datetime(receipt.day.year, receipt.day.month, receipt.day.day, 12).timetuple()
        sheet.save(store, "PDF", resolution=121, title=name, creationDate=moment, modDate=moment)
        return f"{name}.pdf", store.getvalue()
    scan = _scanned(sheet, _PEN if receipt.form == "note" else _INK, seed)
    if receipt.form == "till":
        scan.convert("L").quantize(64, dither=Image.Dither.NONE).save(store, "PNG")
        return f"{name}.png", store.getvalue()
    scan.save(store, "JPEG", quality=80)
    return f"{name}.jpg", store.getvalue()
