"""A camera's photo made small enough for a phone, with nothing in it but what is to be seen."""

from functools import lru_cache
from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from PIL import Image

MOST = 160_000
"""Bytes of a photo on a page; some seconds on a bad signal."""
_QUALITIES = (78, 66, 54, 42)


@lru_cache(maxsize=256)  # in `mkdocs serve` most are as they were
def small_photo(path: Path, digest: str, width: int) -> bytes:  # noqa: ARG001  # of the cache
    """A photo as WebP, upright and in the colours of a screen.

    What a camera writes beside the picture (place, day, its owner) is left behind.

    Args:
        path: of the photo.
        digest: names its content.
        width: in pixels; the photo is at least so wide.
    """
    from PIL import Image, ImageOps  # noqa: PLC0415  # most handbooks have no photo

    with Image.open(path) as image:
        image.draft("RGB", (2 * width, 2 * width))  # a JPEG is read no larger than it is needed
        upright = ImageOps.exif_transpose(image)
        plain = _screen_colours(upright)
    height = round(plain.height * width / plain.width)
    shown = plain.resize((width, height), Image.Resampling.LANCZOS)
    encoded = b""
    for quality in _QUALITIES:
        out = BytesIO()
        shown.save(out, "WEBP", quality=quality, method=4)
        encoded = out.getvalue()
        if len(encoded) <= MOST:
            break
    return encoded


def _screen_colours(image: "Image.Image") -> "Image.Image":
    """An image in sRGB without transparency; one of another colour space is brought over."""
    from PIL import Image, ImageCms  # noqa: PLC0415  # most handbooks have no photo

    profile = image.info.get("icc_profile")
    if image.mode in ("RGBA", "LA", "PA") or "transparency" in image.info:
        paper = Image.new("RGBA", image.size, "white")
        image = Image.alpha_composite(paper, image.convert("RGBA"))
    if profile and image.mode == "RGB":
        try:
            source = ImageCms.ImageCmsProfile(BytesIO(profile))
            brought = ImageCms.profileToProfile(image, source, ImageCms.createProfile("sRGB"))
        except (ImageCms.PyCMSError, OSError):
            brought = None  # a broken profile says nothing of the colours
        image = brought or image
    return image.convert("RGB")
