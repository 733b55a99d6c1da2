"""The cameras of the story and what each writes into its files."""

from dataclasses import dataclass
from datetime import date, datetime, timedelta
from io import BytesIO

from PIL import Image
from PIL.TiffImagePlugin import IFDRational

_EXIF_IFD = 0x8769


@dataclass(frozen=True, slots=True)
class CameraStory:
    """One camera or phone: makers, models and serial numbers are made up.

    ``naming`` is strftime text or, for a counter, a pattern with {number}. ``ahead`` is how much
    later the true time is than the clock showed. ``writes`` says what goes into the file: "all",
    "digitised" (a scanner's own date alone) or "nothing".
    """

    key: str
    make: str
    model: str
    serial: str
    folder: str
    naming: str
    size: tuple[int, int]
    focal: float
    offset: bool = False
    subseconds: bool = False
    upright: bool = False
    ahead: timedelta = timedelta(0)
    writes: str = "all"


#: Edo's old camera lost its battery and woke up on the first of January 2009.
WRONG_CLOCK = datetime(2018, 9, 21, 18, 42) - datetime(2009, 1, 1)

_LARGE, _SMALL = (1600, 1200), (1280, 960)

CAMERAS = {
    camera.key: camera
    for camera in (
        CameraStory(
            "C3", "Corvid", "Corvid Phone 3", "", "Corvid Phone 3/Camera", "IMG_%Y%m%d_%H%M%S",
            _LARGE, 4.2, offset=True, subseconds=True, upright=True,
        ),
        CameraStory(
            "C5", "Corvid", "Corvid Phone 5", "", "Corvid Phone 5/Camera", "IMG_%Y%m%d_%H%M%S",
            _LARGE, 5.1, offset=True, subseconds=True, upright=True,
        ),
        CameraStory(
            "L20", "LUMENFIELD", "L20", "LF2094417", "Lumenfield card/DCIM/100LUMEN",
            "LUMN{number:04d}", _LARGE, 7.4,
        ),
        CameraStory(
            "P4", "Pellicon", "P4", "0027715", "Edo's old camera/DCIM/101PELLI",
            "PELL{number:04d}", _SMALL, 6.1, ahead=WRONG_CLOCK,
        ),
        CameraStory(
            "T1", "Tessel", "One", "", "Edo's phone", "%Y%m%d_%H%M%S", _LARGE, 4.7, offset=True,
            subseconds=True, upright=True,
        ),
        CameraStory(
            "sent", "", "", "", "Sent by Edo", "IMG_%Y%m%d_%H%M%S", _SMALL, 4.7, writes="nothing"
        ),
        CameraStory(
            "scan", "", "", "", "scans", "scan{number:03d}", (1500, 1120), 0, writes="nothing"
        ),
        CameraStory(
            "flatbed", "Leafworth", "Flatbed 600", "", "scans", "album page {number}",
            (1500, 1120), 0, writes="digitised",
        ),
    )
}  # fmt: skip


def own_camera(day: date) -> str:
    """The camera a picture of that day was taken with, where the story doesn't say."""
    pick = (day.toordinal() * 2654435761 >> 7) % 10
    if pick < 2:
        return "L20"
    if pick == 2 and day.year < 2021:
        return "sent"
    return "C3" if day < date(2020, 9, 1) else "C5"


def _last_sunday(year: int, month: int) -> date:
    last = date(year, month, 31)
    return last - timedelta(days=(last.weekday() + 1) % 7)


def offset_on(day: date) -> str:
    """The story's offset from UTC: an hour, two in summer (European rule of 1996)."""
    summer = _last_sunday(day.year, 3) <= day < _last_sunday(day.year, 10)
    return "+02:00" if summer else "+01:00"


def _stamp(moment: datetime) -> str:
    return moment.strftime("%Y:%m:%d %H:%M:%S")


def _exif(camera: CameraStory, shown: datetime, portrait: bool, light: str) -> Image.Exif:
    exif = Image.Exif()
    exif[0x010F], exif[0x0110] = camera.make, camera.model
    detail = exif.get_ifd(_EXIF_IFD)
    if camera.writes == "digitised":
        detail[0x9004] = _stamp(shown)
        return exif
    exif[0x0112] = 6 if portrait else 1
    exif[0x0132] = _stamp(shown)
    detail[0x9003] = detail[0x9004] = _stamp(shown)
    if camera.subseconds:
        detail[0x9291] = detail[0x9292] = f"{shown.microsecond // 1000:03d}"
    if camera.offset:
        detail[0x9010] = detail[0x9011] = detail[0x9012] = offset_on(shown.date())
    if camera.serial:
        detail[0xA431] = camera.serial
    detail[0x829A] = IFDRational(1, 30 if light == "lamp" else 125)
    detail[0x829D] = IFDRational(28, 10)
    detail[0x8827] = {"lamp": 800, "tube": 400}.get(light, 100)
    detail[0x9209] = 1 if light == "flash" else 0
    detail[0x920A] = IFDRational(round(camera.focal * 10), 10)
    detail[0xA002], detail[0xA003] = camera.size
    return exif


def encode(picture: Image.Image, camera: CameraStory, shown: datetime | None, light: str) -> bytes:
    """The file as the camera writes it: an upright picture is stored lying, with orientation 6."""
    portrait = picture.height > picture.width
    if portrait and camera.writes == "all":
        picture = picture.transpose(Image.Transpose.ROTATE_90)
    store = BytesIO()
    if camera.writes == "nothing" or shown is None:
        picture.save(store, "JPEG", quality=82)
    else:
        exif = _exif(camera, shown, portrait, light)
        picture.save(store, "JPEG", quality=82, exif=exif.tobytes())
    return store.getvalue()
