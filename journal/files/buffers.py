"""What counts as bytes in memory."""

from typing import TypeAlias

Buffer: TypeAlias = bytes | bytearray | memoryview
