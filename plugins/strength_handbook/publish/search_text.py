"""What the search reads of a generated page: the same words in fewer tags.

Material's search walks through every tag and attribute of a page in Python; with many exercises
that was the longest part of a build. It keeps headings, paragraphs and lists only, so the rest is
taken out before. What it then says of a page is the same, letter by letter.
"""

import re

# No words to search for, and none holds another of its kind.
_WORDLESS = re.compile(
    r'<table class="sh-(?:strip|grid)[^"]*">.*?</table>|<script\b.*?</script>', re.DOTALL
)
# A heading that is left out takes the text below it along, so the search must see it.
_EXCLUDED = re.compile(r"<(?!h[1-6]\b)(\w+)\b[^>]* data-search-exclude\b[^>]*>")
_BETWEEN_TAGS = re.compile(r">\s+(?=<)")
# Tags that no heading stands in: where a heading's surroundings end, its section ends.
_NEVER_AROUND_HEADINGS = re.compile(
    r"</?(?:a|b|button|caption|dd|dl|dt|em|input|label|option|select|small|span|strong|summary"
    r"|svg|tbody|td|text|th|thead|tr)\b[^>]*>"
)
_ATTRIBUTES = re.compile(r"<(details|div|li|ol|p|section|ul) [^>]*>")
_SPACE = "\0"
_SPACES = re.compile(
    rf"{_SPACE}(?:{_SPACE}|<(?!/?(?:code|h[1-6]|li|ol|p|pre|sub|sup|ul)\b)[^>]*>)*"
)


def search_text(html: str) -> str:
    """A page's content with the tags that tell its search something.

    >>> search_text('<h2 id="a">A <b>b</b></h2> <dl><dt>c</dt> <dd class="d">e</dd></dl>')
    '<h2 id="a">A b</h2> c e'
    """
    html = _without_excluded(_WORDLESS.sub("", html))
    html = _NEVER_AROUND_HEADINGS.sub("", _BETWEEN_TAGS.sub(f">{_SPACE}", html))
    # Spaces on both sides of a tag that is not kept are one space to the search.
    html = _SPACES.sub(lambda run: " " + run[0].replace(_SPACE, ""), html)
    return _ATTRIBUTES.sub(r"<\1>", html)


def _without_excluded(html: str) -> str:
    """The content without what the page keeps from the search.

    >>> _without_excluded("<p>a</p><div data-search-exclude><div>b</div>c</div>d")
    '<p>a</p>d'
    """
    kept, end = [], 0
    for opening in _EXCLUDED.finditer(html):
        if opening.start() >= end:
            kept.append(html[end : opening.start()])
            end = _closing(html, opening[1], opening.end())
    return "".join(kept) + html[end:]


def _closing(html: str, tag: str, start: int) -> int:
    """Where an element ends whose content starts at a place."""
    depth = 1
    for found in re.compile(rf"<(/?){tag}\b").finditer(html, start):
        depth += -1 if found[1] else 1
        if depth == 0:
            return html.index(">", found.end()) + 1
    return len(html)
