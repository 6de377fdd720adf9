"""What tells one printed card from another: a code of its content, and a code for a phone."""

import hashlib
import re
from html import unescape
from io import BytesIO

import segno
from markupsafe import Markup

from strength_handbook.pages.render import safe

LETTERS = "34679CDFGHJKMNPQRTWX"
"""No two of them look alike on a smudged card, and without vowels they make no words."""
LENGTH = 5

_TAG = re.compile(r"<[^>]*>")


def words_of(html: str) -> str:
    """Every word and number of a piece of HTML, without its elements.

    >>> words_of("<li>3&nbsp;×&nbsp;5</li><li>rest</li>")
    '3 × 5 rest'
    """
    return " ".join(unescape(_TAG.sub(" ", html)).split())


def content_code(html: str) -> str:
    """A short code of what a card says; another word or number gives another code.

    Two versions of a card have the same code once in 3.2 million times.

    >>> content_code("<p>4 × 5</p>") == content_code("<b>4 × 5</b>") != content_code("<p>4 × 6</p>")
    True
    """
    number = int.from_bytes(hashlib.sha256(words_of(html).encode()).digest(), "big")
    letters = []
    for _ in range(LENGTH):
        number, rest = divmod(number, len(LETTERS))
        letters.append(LETTERS[rest])
    return "".join(letters)


def phone_code(address: str) -> Markup:
    """A QR code as an SVG picture that leads to an address; 15 % of it may be worn off."""
    out = BytesIO()
    # The quiet zone of four modules is the standard's (ISO/IEC 18004).
    segno.make(address, error="m", micro=False, boost_error=False).save(
        out, kind="svg", xmldecl=False, svgns=False, svgclass=None, lineclass=None,
        omitsize=True, border=4, dark="#000", light="#fff", nl=False,
    )  # fmt: skip
    return safe(out.getvalue().decode())
