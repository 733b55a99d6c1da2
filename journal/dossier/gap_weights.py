"""What a gap of each kind weighs, for any reader and for a buyer or a valuer.

Common practice, no source: first what leaves a statement about hidden metal without proof, last
what is only untidy.
"""

from journal.domain.gaps import GapKind, Reader

WEIGHTS = {
    GapKind.PHOTO_DAMAGED: 90,
    GapKind.WELD_UNSEEN: 88,
    GapKind.AREA_NO_AFTER: 86,
    GapKind.AREA_NO_DURING: 84,
    GapKind.AREA_NO_BEFORE: 80,
    GapKind.CLAIM_WORD_ALONE: 78,
    GapKind.AREA_UNDATED: 76,
    GapKind.NO_ACQUIRED: 74,
    GapKind.AREA_NOTHING_SAID: 70,
    GapKind.RECEIPT_TOTAL: 68,
    GapKind.RECEIPT_LOST: 66,
    GapKind.AREA_NO_PANEL: 64,
    GapKind.AREA_NOT_WELDED: 63,
    GapKind.AREA_NOT_READ_AFTER: 62,
    GapKind.AREA_NO_READING: 61,
    GapKind.AREA_NOT_FINISHED: 60,
    GapKind.STAGE_VAGUE: 57,
    GapKind.PHOTOS_UNDATED: 55,
    GapKind.METAL_NO_PAPER: 52,
    GapKind.RECEIPT_NO_SCAN: 50,
    GapKind.CAR_IDENTITY: 48,
    GapKind.RECEIPT_NEVER: 46,
    GapKind.PHOTOS_VAGUE: 44,
    GapKind.NO_STANDARD_VIEWS: 40,
    GapKind.AREA_NO_HOURS: 36,
    GapKind.NO_ON_THE_ROAD: 26,
    GapKind.RECEIPT_UNSHARED: 20,
    GapKind.PHOTOS_UNPLACED: 16,
    GapKind.PHOTOS_NO_HOURS: 12,
    GapKind.PANELS_NO_PHOTO: 10,
    GapKind.WANTED_NOT_ARRIVED: 8,
}

#: Up to this weight a gap is only untidy.
ONLY_UNTIDY = 25

#: A buyer asks what is hidden under the paint and what is left to do, a valuer which car it is,
#: how it stands, and what papers there are.
WEIGHTS_FOR = {
    Reader.BUYER: {
        GapKind.WELD_UNSEEN: 98,
        GapKind.AREA_NO_DURING: 96,
        GapKind.CLAIM_WORD_ALONE: 94,
        GapKind.AREA_NOT_WELDED: 92,
        GapKind.AREA_NOT_FINISHED: 91,
        GapKind.AREA_NO_READING: 85,
        GapKind.AREA_NOT_READ_AFTER: 83,
        GapKind.RECEIPT_TOTAL: 30,
        GapKind.RECEIPT_LOST: 42,
        GapKind.RECEIPT_NEVER: 28,
        GapKind.RECEIPT_NO_SCAN: 24,
        GapKind.NO_STANDARD_VIEWS: 38,
    },
    Reader.VALUER: {
        GapKind.CAR_IDENTITY: 98,
        GapKind.NO_STANDARD_VIEWS: 95,
        GapKind.AREA_NOT_FINISHED: 93,
        GapKind.RECEIPT_LOST: 91,
        GapKind.RECEIPT_TOTAL: 89,
        GapKind.METAL_NO_PAPER: 87,
        GapKind.RECEIPT_NO_SCAN: 85,
        GapKind.RECEIPT_NEVER: 83,
        GapKind.NO_ON_THE_ROAD: 72,
        GapKind.AREA_NO_HOURS: 71,
        GapKind.AREA_NO_BEFORE: 58,
    },
}
