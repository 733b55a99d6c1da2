"""Photos carried by the mouse: what travels with the drag, and the picture under the pointer."""

import json
from collections.abc import Sequence

from PySide6.QtCore import QByteArray, QMimeData, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QPainter, QPen, QPixmap

from journal.domain.ids import PhotoId

#: What a drag of photos is called; its data is a JSON list of photo numbers.
PHOTOS_MIME = "application/x-restoration-journal-photos"

_SIZE = 112
_CARD = 84
_TILTS = (-7.0, 5.0, 0.0)


def photos_to_mime(ids: Sequence[PhotoId]) -> QMimeData:
    """The data of a drag of these photos."""
    data = QMimeData()
    data.setData(PHOTOS_MIME, QByteArray(json.dumps(list(ids)).encode()))
    return data


def photos_from_mime(data: QMimeData) -> tuple[PhotoId, ...]:
    """The photos a drag carries; none if it carries something else or nonsense."""
    if not data.hasFormat(PHOTOS_MIME):
        return ()
    try:
        numbers = json.loads(bytes(data.data(PHOTOS_MIME).data()))
    except ValueError:
        return ()
    if not isinstance(numbers, list):
        return ()
    return tuple(PhotoId(number) for number in numbers if type(number) is int)


def drag_picture(
    pictures: Sequence[QPixmap], count: int, *, ink: QColor, paper: QColor, ratio: float = 1.0
) -> QPixmap:
    """Up to three thumbnails in a loose stack, with how many photos the drag carries."""
    stack = QPixmap(round(_SIZE * ratio), round(_SIZE * ratio))
    stack.setDevicePixelRatio(ratio)
    stack.fill(Qt.GlobalColor.transparent)
    painter = QPainter(stack)
    painter.setRenderHints(
        QPainter.RenderHint.Antialiasing | QPainter.RenderHint.SmoothPixmapTransform
    )
    shown = list(pictures[:3])
    sheets = max(1, min(3, count))
    for layer in range(sheets):
        picture = shown[layer] if layer < len(shown) else None
        _paint_sheet(painter, picture, _TILTS[3 - sheets + layer], ink, paper)
    if count > 1:
        _paint_count(painter, count, ink, paper)
    painter.end()
    return stack


def _paint_sheet(
    painter: QPainter, picture: QPixmap | None, tilt: float, ink: QColor, paper: QColor
) -> None:
    painter.save()
    painter.translate(_SIZE / 2, _SIZE / 2)
    painter.rotate(tilt)
    width, height = _CARD, _CARD * 3 // 4
    if picture is not None and not picture.isNull():
        size = picture.deviceIndependentSize()
        scale = min(_CARD / size.width(), _CARD / size.height())
        width, height = round(size.width() * scale), round(size.height() * scale)
    area = QRectF(-width / 2, -height / 2, width, height)
    painter.setPen(QPen(ink, 1))
    painter.setBrush(paper)
    painter.drawRect(area.adjusted(-3, -3, 3, 3))
    if picture is not None and not picture.isNull():
        painter.drawPixmap(area, picture, QRectF(picture.rect()))
    painter.restore()


def _paint_count(painter: QPainter, count: int, ink: QColor, paper: QColor) -> None:
    font = QFont(painter.font())
    font.setBold(True)
    font.setPixelSize(15)
    painter.setFont(font)
    text = f"{count:,}"
    wide = max(28, painter.fontMetrics().horizontalAdvance(text) + 16)
    badge = QRectF(0, 0, wide, 28)
    badge.moveBottomRight(QPointF(_SIZE - 1, _SIZE - 1))
    painter.setPen(QPen(paper, 2))
    painter.setBrush(ink)
    painter.drawRoundedRect(badge, 14, 14)
    painter.drawText(badge, Qt.AlignmentFlag.AlignCenter, text)
