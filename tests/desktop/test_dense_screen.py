"""On a screen of two pixels a point everything lies where it lies on others."""

import os
import subprocess
import sys

_SCRIPT = """
from PySide6.QtWidgets import QApplication
from journal.desktop import theme
from journal.desktop.tools.tool import Tool
from journal.desktop.widgets.tool_canvas import ToolCanvas
from journal.domain.areas import DEFAULT_STAGES
from journal.domain.ids import PanelId
from tests.desktop.drawing_fakes import small_drawing

app = QApplication([])
app.setPalette(theme.palette(theme.LIGHT))
canvas = ToolCanvas()
canvas.resize(800, 500)
canvas.set_drawing(small_drawing())
canvas.set_stages({PanelId(2): DEFAULT_STAGES[0]}, DEFAULT_STAGES)
canvas.show()
for tool in (None, Tool(None, canvas)):
    canvas.set_tool(tool)
    at = canvas.signs()[PanelId(2)]
    image = canvas.viewport().grab().toImage()
    ratio = image.devicePixelRatio()
    assert ratio == 2, ratio
    found = image.pixelColor(round(at.x() * ratio), round((at.y() - 6.5) * ratio))
    print(found.name())
canvas.set_tool(None)
"""


def test_the_sign_of_a_stage_lies_on_its_panel():
    """Also with a tool in hand, where what rests is painted from a picture."""
    from journal.desktop.theme import LIGHT

    surroundings = {**os.environ, "QT_QPA_PLATFORM": "offscreen", "QT_SCALE_FACTOR": "2"}
    done = subprocess.run(
        [sys.executable, "-c", _SCRIPT],
        env=surroundings,
        capture_output=True,
        text=True,
        check=False,
        timeout=60,
    )
    assert done.returncode == 0, done.stderr
    assert done.stdout.lower().split() == [LIGHT.surface.lower()] * 2
