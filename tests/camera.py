"""Photos as cameras write them, and films as far as their form goes."""

from io import BytesIO
from pathlib import Path

from PIL import Image

ORIENTATION, GPS = 0x0112, 0x8825
PLACE = "not to be published"


def photo(
    path: Path, size: tuple[int, int] = (1600, 1200), turned: int = 1, form: str = "JPEG"
) -> Path:
    """A photo, dark at the left as it is held upright, with a place, a maker and a day in it."""
    wide, high = size
    upright = Image.new("RGB", size, "white")
    upright.paste((20, 40, 60), (0, 0, wide // 4, high))
    # What a camera does that is held in this way: Exif 2.3, 4.6.4, orientation.
    stored = {1: upright, 6: upright.rotate(90, expand=True), 3: upright.rotate(180)}[turned]
    exif = Image.Exif()
    exif[ORIENTATION] = turned
    exif[0x010F] = PLACE
    exif.get_ifd(GPS)[1] = "N"
    exif.get_ifd(GPS)[2] = (54.0, 26.0, 12.0)
    path.parent.mkdir(parents=True, exist_ok=True)
    stored.save(path, form, exif=exif)
    return path


def film(path: Path, more: bytes = b"", size: int = 400_000) -> Path:
    """The beginning of an MP4 file, then nothing: browsers show its poster and say no more."""
    head = b"\x00\x00\x00\x18ftypmp42\x00\x00\x00\x00mp42isom" + more
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(head + b"\x00" * (size - len(head)))
    return path


def opened(content: bytes) -> Image.Image:
    """A picture of the site."""
    return Image.open(BytesIO(content))
