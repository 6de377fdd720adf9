"""What a built page says about names: another name of its exercise, and words with meanings."""

from dataclasses import dataclass
from html.parser import HTMLParser

_IN_A_LINE = ("a", "abbr", "b", "code", "em", "i", "small", "span", "strong")


@dataclass(frozen=True)
class Term:
    """A word from a list of words, its meaning, and the place on the page it stands below."""

    word: str
    meaning: str
    below: str


def other_name(html: str) -> str:
    """The exercise's other name, empty where it has none.

    >>> other_name('<p class=sh-also>Rising on <b>one</b> foot<p>Chest up.')
    'Rising on one foot'
    """
    return _read(html).also


def terms(html: str) -> list[Term]:
    """The words that a page explains.

    >>> terms('<h2 id="w">W</h2><dl class="sh-words-list"><dt>Wave</dt><dd>Weeks.</dd></dl>')
    [Term(word='Wave', meaning='Weeks.', below='w')]
    """
    return _read(html).terms


def _read(html: str) -> "_Reader":
    reader = _Reader()
    if "sh-also" in html or "sh-words-list" in html:
        reader.feed(html)
        reader.close()
    return reader


class _Reader(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.also = ""
        self.terms: list[Term] = []
        self._below = ""
        self._in_list = False
        self._tag = ""
        self._text = ""
        self._word = ""

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self._end(tag)
        known = dict(attrs)
        kinds = (known.get("class") or "").split()
        if tag in ("h1", "h2", "h3") and known.get("id"):
            self._below = known["id"] or ""
        if tag == "dl":
            self._in_list = "sh-words-list" in kinds
        if (tag == "p" and "sh-also" in kinds) or (self._in_list and tag in ("dt", "dd")):
            self._tag, self._text = tag, ""

    def handle_data(self, data: str) -> None:
        self._text += data

    def handle_endtag(self, tag: str) -> None:
        self._end(tag)

    def _end(self, tag: str) -> None:
        """Any block ends a paragraph or a word: their own closing tags may be left out."""
        if not self._tag or tag in _IN_A_LINE:
            return
        text = " ".join(self._text.split())
        if self._tag == "p":
            self.also = text
        elif self._tag == "dt":
            self._word = text
        else:
            self.terms.append(Term(self._word, text, self._below))
        self._tag = ""
