"""Tables and workings, taken out of a page while MkDocs works on it and put back at the end.

They have no words to search for, but Material's search would read every one of their cells; with
many exercises that is half of a build.
"""

import re

# Neither holds another of its kind; a table inside a working goes with it.
_TABLE = re.compile(
    r'<table class="sh-(?:strip|grid)[^"]*">.*?</table>'
    r'|<details class="sh-working"[^>]*>.*?</details>',
    re.DOTALL,
)
_MARK = re.compile(r"<!--sh-table-(\d+)-->")


def without_tables(html: str) -> tuple[str, tuple[str, ...]]:
    """The page with a mark in place of each table, and the tables.

    >>> without_tables('<p>a</p><table class="sh-grid"><tr></tr></table>')
    ('<p>a</p><!--sh-table-0-->', ('<table class="sh-grid"><tr></tr></table>',))
    """
    tables: list[str] = []

    def take(found: re.Match[str]) -> str:
        tables.append(found[0])
        return f"<!--sh-table-{len(tables) - 1}-->"

    return _TABLE.sub(take, html), tuple(tables)


def with_tables(html: str, tables: tuple[str, ...]) -> str:
    """The page with its tables back in their places.

    >>> with_tables("<p>a</p><!--sh-table-0-->", ("<table></table>",))
    '<p>a</p><table></table>'
    """
    return _MARK.sub(lambda found: tables[int(found[1])], html) if tables else html
