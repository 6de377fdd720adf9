"""What comes out of the printer: sheets, their sizes, and what stands where on them.

Sizes are in points, 72 to the inch.
"""

import re
from io import BytesIO
from typing import Any

from playwright.sync_api import Page
from pypdf import PdfReader

A5 = (419.5, 595.3)
A4 = (595.3, 841.9)
"""148 mm × 210 mm, and 210 mm × 297 mm (ISO 216)."""
LETTER = (612.0, 792.0)
"""8.5 in × 11 in (ANSI/ASME Y14.1, size A)."""
HALF_LETTER = (396.0, 612.0)
"""A sheet of Letter, cut across."""

_PAGE = re.compile(rb"/Type\s*/Page\b")
_BOX = re.compile(rb"/MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]")
# What stands between two exercises, and after the last.
_AFTER = re.compile(
    r"[A-Z]\d?$|from$|[A-Z](, [A-Z])+ in turn|Late\?|A shorter session|Partners|Training alone"
)


def printed(page: Page) -> tuple[int, set[tuple[float, float]]]:
    """Sheets of paper, and their sizes in points."""
    return sheets_of(page.pdf(prefer_css_page_size=True))


def sheets_of(pdf: bytes) -> tuple[int, set[tuple[float, float]]]:
    """The same of what has been printed."""
    sizes = {(float(width), float(height)) for width, height in _BOX.findall(pdf)}
    return len(_PAGE.findall(pdf)), sizes


def columns_of(pdf: bytes, names: list[str]) -> dict[str, set[tuple[int, bool]]]:
    """Sheets and columns (right or not) in which the words of each exercise are printed.

    A PDF of the browser has the words in the order of the page, each with its place.
    """
    heads = [" ".join(name.split()) for name in names]
    found: dict[str, set[tuple[int, bool]]] = {}
    now, said = "", ""
    for sheet, paper in enumerate(PdfReader(BytesIO(pdf)).pages):
        middle = float(paper.mediabox.width) / 2

        def word(text: str, around: Any, own: Any, *_: Any, at: Any = (sheet, middle)) -> None:
            nonlocal now, said
            if not text.strip():
                return
            said = f"{said} {text}"[-200:]
            line = " ".join(said.split())
            now = next((one for one in heads if line.endswith(one) and one not in found), now)
            if _AFTER.match(text.strip()):
                now = ""
            left = own[4] * around[0] + own[5] * around[2] + around[4]
            if now:
                found.setdefault(now, set()).add((at[0], left > at[1]))

        paper.extract_text(visitor_text=word)
    assert found.keys() == set(heads)
    return found
