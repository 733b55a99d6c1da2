"""Receipts drawn by code, with what stands on them: on paper photographed badly, and as PDFs.

Everything on them is made up. Six layouts, four currencies, three orders of date; every tenth has
lost its lower part, total and all, so that a total that is read there was invented.
"""

import io
import random
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from pathlib import Path

import cv2
import numpy as np
from PIL import Image, ImageDraw, ImageFont

from journal.domain.papers import DateOrder

_SHOPS = {
    "en": ("Tollgate Motor Factors", "Fenwright Tools", "Harrow Lane Paints"),
    "de": ("Autoteile Brandauer", "Werkzeug Kessler", "Lackhaus Süderau"),
    "fr": ("Pièces Montclar", "Garage Vaudrey"),
    "nl": ("Onderdelen Vreeland", "Gereedschap Hoekema"),
    "sv": ("Bildelar Östervik", "Verktyg Lindhaga"),
}
_STREETS = {
    "en": "14 Mill Lane, Harrowby", "de": "Mühlenweg 14, 24103 Süderau",
    "fr": "14 rue du Moulin, Vaudrey", "nl": "Molenstraat 14, Vreeland",
    "sv": "Kvarngatan 14, Östervik",
}  # fmt: skip
_GOODS = {
    "en": ("Brake hose", "Seam sealer", "Wire brush", "Sill, outer", "Cavity wax", "Hub bearing",
           "Copper washer", "Zinc primer", "Clutch cable"),
    "de": ("Bremsschlauch", "Karosseriedichtmasse", "Drahtbürste", "Schweller außen",
           "Hohlraumwachs", "Radlager", "Kupferring", "Zinkgrundierung"),
    "fr": ("Flexible de frein", "Mastic", "Brosse métallique", "Bas de caisse", "Cire creuse",
           "Roulement", "Joint cuivre", "Apprêt zinc"),
    "nl": ("Remslang", "Naadkit", "Staalborstel", "Dorpel links", "Holtewas", "Wiellager",
           "Koperen ring", "Zinkprimer"),
    "sv": ("Bromsslang", "Fogmassa", "Stålborste", "Tröskel vänster", "Hålrumsvax", "Hjullager",
           "Kopparbricka", "Zinkprimer"),
}  # fmt: skip
_SAID = {
    "en": ("Subtotal", "VAT", "TOTAL", "Cash", "Change", "Date", "Receipt"),
    "de": ("Zwischensumme", "MwSt", "Gesamtbetrag", "Bar", "Rückgeld", "Datum", "Rechnung"),
    "fr": ("Sous-total", "TVA", "Total TTC", "Espèces", "Rendu", "Date", "Facture"),
    "nl": ("Subtotaal", "BTW", "Totaal", "Contant", "Wisselgeld", "Datum", "Kassabon"),
    "sv": ("Delsumma", "Moms", "Att betala", "Kontant", "Växel", "Datum", "Kvitto"),
}
_MONEY = (("en", "GBP", "£", 20), ("de", "EUR", "€", 19), ("en", "USD", "$", 8),
          ("sv", "SEK", "kr", 25), ("fr", "EUR", "€", 20), ("nl", "EUR", "€", 21))  # fmt: skip
_FONTS = Path("/usr/share/fonts/truetype/dejavu")
_WIDE = 42


@dataclass(frozen=True)
class Truth:
    """What stands on a drawn receipt; ``total`` is None where it was torn off."""

    supplier: str
    day: date
    currency: str
    total: int | None
    lines: tuple[tuple[str, Decimal, int], ...]
    tax: int | None
    order: DateOrder
    layout: int


@dataclass(frozen=True)
class Drawn:
    """A receipt as rows of text: from the left, from the right, and how large."""

    truth: Truth
    rows: tuple[tuple[str, str, bool], ...]


def drawn(number: int) -> Drawn:
    """The receipt of a number, the same each time."""
    dice = random.Random(9000 + number)
    layout = number % 6
    language, currency, sign, rate = _MONEY[(number // 2 + number // 6) % 6]
    said = _SAID[language]
    day = date(dice.randint(2009, 2025), dice.randint(1, 12), dice.randint(1, 28))
    order = DateOrder.MONTH_FIRST if currency == "USD" else DateOrder.DAY_FIRST
    lines = _lines(dice, language)
    total = sum(amount for _, _, amount in lines)
    tax = round(total * rate / (100 + rate))
    torn = number % 10 == 9
    write = _Writer(language, sign, layout)
    shop = dice.choice(_SHOPS[language])
    rows = _head(shop, language, said, _date(day, number, currency), layout)
    rows += [row for line in lines for row in write.line(*line)]
    if not torn:
        rows += _foot(write, said, (total, tax, rate), layout, dice)
    truth = Truth(
        shop, day, currency, None if torn else total, tuple(lines), None if torn else tax,
        order, layout,
    )  # fmt: skip
    return Drawn(truth, tuple(rows))


def _lines(dice: random.Random, language: str) -> list[tuple[str, Decimal, int]]:
    goods = dice.sample(_GOODS[language], dice.randint(2, 6))
    found = []
    for name in goods:
        quantity = dice.choice((1, 1, 1, 2, 3))
        unit = dice.choice((dice.randint(90, 999), dice.randint(1000, 19_999)))
        found.append((name, Decimal(quantity), quantity * unit))
    return found


def _date(day: date, number: int, currency: str) -> str:
    if number % 3 == 0:
        return day.isoformat()
    if currency == "USD":
        return f"{day:%m/%d/%Y}"
    marks = {1: ".", 2: "/"}
    return day.strftime(marks[number % 3].join(("%d", "%m", "%Y" if number % 2 else "%y")))


def _head(shop: str, language: str, said: tuple[str, ...], day: str, layout: int) -> list:
    clock = f"{9 + layout}:3{layout}"
    if layout in (0, 3):
        rows = [
            (shop, "", True),
            (_STREETS[language], "", False),
            ("Tel. 01234 567 890", "", False),
        ]
    elif layout in (1, 4):
        rows = [(said[6], "", False), (shop, "", True), (_STREETS[language], "", False)]
    else:
        rows = [(shop.upper(), "", True), ("www.example.org", "", False)]
    return [*rows, (f"{said[5]}: {day} {clock}", f"#{1000 + layout * 37}", False), ("", "", False)]


class _Writer:
    """Writes lines and sums as a layout and a language do."""

    def __init__(self, language: str, sign: str, layout: int) -> None:
        self._language, self._sign, self._layout = language, sign, layout

    def money(self, minor: int, *, signed: bool = False) -> str:
        whole, cents = divmod(abs(minor), 100)
        if self._language == "en":
            text = f"{whole:,}.{cents:02}"
            return f"{self._sign}{text}" if signed else text
        group = "." if self._language in ("de", "nl") else " "
        text = f"{whole:,}".replace(",", group) + f",{cents:02}"
        return f"{text} {self._sign}" if signed else text

    def line(self, name: str, quantity: Decimal, amount: int) -> list[tuple[str, str, bool]]:
        unit = self.money(int(amount / quantity))
        if self._layout in (0, 4):
            return [(f"{quantity} x {name}", self.money(amount), False)]
        if self._layout in (1, 5) and quantity > 1:
            return [(name, "", False), (f"   {quantity} x {unit}", self.money(amount), False)]
        if self._layout == 2:
            return [(f"{quantity}  {name}", f"{unit}   {self.money(amount)}", False)]
        mark = f"{self.money(amount)} A" if self._layout == 3 else self.money(amount)
        front = f"{quantity} x " if quantity > 1 else ""
        return [(front + name, mark, False)]


def _foot(write: _Writer, said: tuple[str, ...], sums: tuple[int, int, int], layout: int, dice):
    total, tax, rate = sums
    rows = [("-" * 20, "", False)]
    if layout in (1, 2, 4):
        rows.append((said[0], write.money(total - tax), False))
        rows.append((f"{said[1]} {rate}%", write.money(tax), False))
    rows.append((said[2], write.money(total, signed=True), True))
    if layout in (0, 3):
        given = (total // 5000 + 1) * 5000
        rows.append((said[3], write.money(given), False))
        rows.append((said[4], write.money(given - total), False))
    if layout in (0, 3, 5):
        rows.append((f"{said[1]} {rate}%", write.money(tax), False))
    return rows


# --- as paper ---


def paper(of: Drawn, *, scale: int = 30) -> np.ndarray:
    """The receipt printed flat, as grey pixels."""
    serif = of.truth.layout in (2, 5)
    plain = _font("DejaVuSerif" if serif else "DejaVuSansMono", scale)
    large = _font("DejaVuSerif-Bold" if serif else "DejaVuSansMono-Bold", int(scale * 1.25))
    wide, step = int(scale * 0.62 * _WIDE) + 80, int(scale * 1.5)
    high = 80 + sum(int(step * (1.3 if row[2] else 1)) for row in of.rows)
    image = Image.new("L", (wide, high), 246)
    pen = ImageDraw.Draw(image)
    y = 40
    for left, right, is_large in of.rows:
        font = large if is_large else plain
        pen.text((40, y), left, font=font, fill=38)
        pen.text((wide - 40, y), right, font=font, fill=38, anchor="ra")
        y += int(step * (1.3 if is_large else 1))
    return np.asarray(image)


def photographed(of: Drawn, seed: int, *, turn: int = 0) -> bytes:
    """The paper photographed badly: bent, at a slant, shaded, blurred, grainy; a JPEG."""
    rng = np.random.default_rng(seed)
    flat = paper(of)
    high, wide = flat.shape
    edge = int(0.12 * max(high, wide))
    ground = np.full((high + 2 * edge, wide + 2 * edge), 92, np.uint8)
    ground[edge:-edge, edge:-edge] = flat
    bent = _bent(_slanted(ground, rng), rng)
    high, wide = bent.shape
    across, down = np.meshgrid(np.linspace(0, 1, wide), np.linspace(0, 1, high))
    a, b = rng.uniform(-0.35, 0.35, 2)
    shade = 0.92 + a * (across - 0.5) + b * (down - 0.5)
    shaded = bent * shade + rng.normal(0, 5, bent.shape)
    shaded = cv2.GaussianBlur(shaded.clip(0, 255).astype(np.uint8), (0, 0), rng.uniform(0.8, 1.5))
    turned = np.rot90(shaded, -turn // 90)
    tinted = np.stack([turned * 0.93, turned * 0.98, turned], axis=2).astype(np.uint8)
    out = io.BytesIO()
    Image.fromarray(np.ascontiguousarray(tinted[:, :, ::-1])).save(out, "JPEG", quality=55)
    return out.getvalue()


def _slanted(ground: np.ndarray, rng: np.random.Generator) -> np.ndarray:
    high, wide = ground.shape
    corners = np.float32([[0, 0], [wide, 0], [wide, high], [0, high]])
    moved = corners + rng.uniform(-0.045, 0.045, (4, 2)).astype(np.float32) * min(wide, high)
    matrix = cv2.getPerspectiveTransform(corners, moved.astype(np.float32))
    return cv2.warpPerspective(ground, matrix, (wide, high), borderValue=92)


def _bent(image: np.ndarray, rng: np.random.Generator) -> np.ndarray:
    high, wide = image.shape
    across, down = np.meshgrid(np.arange(wide, dtype=np.float32), np.arange(high, dtype=np.float32))
    by = rng.uniform(2, 6)
    wave = by * np.sin(2 * np.pi * (across / wide * rng.uniform(0.5, 1.1) + rng.uniform(0, 1)))
    return cv2.remap(image, across, down + wave.astype(np.float32), cv2.INTER_LINEAR,
                     borderMode=cv2.BORDER_REPLICATE)  # fmt: skip


def _font(name: str, size: int) -> ImageFont.FreeTypeFont:
    return ImageFont.truetype(str(_FONTS / f"{name}.ttf"), size)


def has_fonts() -> bool:
    """Whether the typefaces that paper is printed in are on this machine."""
    return (_FONTS / "DejaVuSansMono.ttf").exists()


# --- as PDF ---


def pdf(of: Drawn) -> bytes:
    """The receipt as a PDF with a text layer and nothing else, written by hand (ISO 32000-1)."""
    wide, step = 330, 15
    high = 60 + step * len(of.rows)
    parts = []
    for number, (left, right, is_large) in enumerate(of.rows):
        size = 11 if is_large else 9
        y = high - 40 - number * step
        parts.append(_shown(left, 20, y, size))
        parts.append(_shown(right, wide - 20 - 0.6 * size * len(right), y, size))
    return written("\n".join(parts).encode("cp1252"), wide, high)


def _shown(text: str, x: float, y: float, size: int) -> str:
    escaped = text.replace("\\", r"\\").replace("(", r"\(").replace(")", r"\)")
    return f"BT /F {size} Tf {x:.1f} {y} Td ({escaped}) Tj ET" if text else ""


def written(content: bytes, wide: int, high: int, pages: int = 1) -> bytes:
    """A PDF of so many pages with one content and a fixed-width typeface."""
    kids = " ".join(f"{4 + n} 0 R" for n in range(pages))
    font = b"<< /Type /Font /Subtype /Type1 /BaseFont /Courier /Encoding /WinAnsiEncoding >>"
    page = (
        f"<< /Type /Page /Parent 1 0 R /MediaBox [0 0 {wide} {high}] /Contents 3 0 R "
        "/Resources << /Font << /F 2 0 R >> >> >>"
    ).encode()
    objects = [
        f"<< /Type /Pages /Kids [{kids}] /Count {pages} >>".encode(),
        font,
        b"<< /Length %d >>\nstream\n" % len(content) + content + b"\nendstream",
        *[page] * pages,
        b"<< /Type /Catalog /Pages 1 0 R >>",
    ]
    out, places = bytearray(b"%PDF-1.4\n"), []
    for number, body in enumerate(objects, start=1):
        places.append(len(out))
        out += b"%d 0 obj\n" % number + body + b"\nendobj\n"
    start = len(out)
    out += b"xref\n0 %d\n0000000000 65535 f \n" % (len(objects) + 1)
    out += b"".join(b"%010d 00000 n \n" % place for place in places)
    out += b"trailer << /Size %d /Root %d 0 R >>\n" % (len(objects) + 1, len(objects))
    return bytes(out + b"startxref\n%d\n%%%%EOF\n" % start)
