"""Names for row numbers, so that a photo's number can't be passed as a panel's."""

import re
from typing import NewType

PhotoId = NewType("PhotoId", int)
CameraId = NewType("CameraId", int)
ViewId = NewType("ViewId", int)
PanelId = NewType("PanelId", int)
PinId = NewType("PinId", int)
AreaId = NewType("AreaId", int)
StageChangeId = NewType("StageChangeId", int)
ReceiptId = NewType("ReceiptId", int)
LineId = NewType("LineId", int)
WorkId = NewType("WorkId", int)
EntryId = NewType("EntryId", int)
PersonId = NewType("PersonId", int)
ClockingId = NewType("ClockingId", int)
MilestoneId = NewType("MilestoneId", int)
AnchorId = NewType("AnchorId", int)
SeamId = NewType("SeamId", int)
SeamChangeId = NewType("SeamChangeId", int)
PatchId = NewType("PatchId", int)
MeasureId = NewType("MeasureId", int)
ReadingId = NewType("ReadingId", int)
WantedId = NewType("WantedId", int)
SightingId = NewType("SightingId", int)
WantedChangeId = NewType("WantedChangeId", int)
PriceIndexId = NewType("PriceIndexId", int)
ValuationId = NewType("ValuationId", int)
ComparableId = NewType("ComparableId", int)
SurveyId = NewType("SurveyId", int)
CauseId = NewType("CauseId", int)
FindingId = NewType("FindingId", int)
CoverBoxId = NewType("CoverBoxId", int)
PairId = NewType("PairId", int)
PrivateWordId = NewType("PrivateWordId", int)
EditId = NewType("EditId", int)

#: SHA-256 of an original's bytes, 64 lower-case hexadecimal digits.
Sha256 = NewType("Sha256", str)


def typed_number(text: str) -> int | None:
    """The row number that a person typed, None where the text is none that a row can have."""
    return int(text) if re.fullmatch("[0-9]{1,18}", text) else None
