"""Pages for the rack are packed: nothing that is read or followed may be lost by it."""

import re
from html import unescape

import demo
from strength_handbook.checked import check_folder
from strength_handbook.pages.site import write_pages
from strength_handbook.publish.touch_up import packed

_IN_A_LINE = re.compile(r"</?(?:a|b|span|small)\b[^>]*>")
_TAG = re.compile(r"<[^>]+>")
_BLOCK = re.compile(r"<script.*?</script>", re.DOTALL)


def words(html: str) -> list[str]:
    """Words as they are read: only a tag that breaks the line parts two of them."""
    return unescape(_TAG.sub(" ", _IN_A_LINE.sub("", _BLOCK.sub(" ", html)))).split()


def links(html: str) -> list[str]:
    return [unescape(one) for one in re.findall(r'href="?([^" >]+)', html)]


def test_a_packed_page_says_the_same() -> None:
    worked = check_folder(demo.ROOT / "programs").worked
    assert worked is not None
    pages = [page for page in write_pages(worked).pages if page.jumps]
    assert len(pages) > 30
    for page in pages:
        smaller = packed(page.html)
        assert len(smaller) < 0.95 * len(page.html), page.uri
        assert words(smaller) == words(page.html), page.uri
        assert links(smaller) == links(page.html), page.uri
        data = [re.sub(r"<script[^>]*>", "", one) for one in _BLOCK.findall(page.html)]
        assert [re.sub(r"<script[^>]*>", "", one) for one in _BLOCK.findall(smaller)] == data
