"""The page to find things on: a list of everything, and a field that narrows it."""

from collections.abc import Iterable
from html import escape

from strength_handbook.publish.file_copy.find_entries import Entry, EntryGroup

TITLE = "Find a page"


def find_article(found: Iterable[EntryGroup]) -> str:
    """The page's content; links are written as on the server, from a folder below the root."""
    chapters = list(enumerate(found, 1))
    jumps = "".join(f'<a href="#find-{at}">{escape(one.title)}</a>' for at, one in chapters)
    return (
        f'<h1 id="top">{TITLE}</h1>\n'
        '<form data-sh-find role="search" hidden>\n'
        '<p class="sh-field"><label for="sh-find">Words, or how they begin</label>'
        '<input id="sh-find" type="search" autocomplete="off" autocapitalize="off" '
        'spellcheck="false" enterkeyhint="search" maxlength="80"></p>\n'
        '<p role="status" class="sh-note"></p>\n</form>\n'
        '<ol class="sh-index sh-found" hidden></ol>\n'
        f'<div data-sh-all>\n<p class="sh-meta sh-jump">{jumps}</p>\n'
        + "".join(_chapter(at, one) for at, one in chapters)
        + "</div>"
    )


def _chapter(at: int, group: EntryGroup) -> str:
    lines = "".join(map(_line, group.entries))
    return (
        f'<section aria-labelledby="find-{at}"><h2 id="find-{at}">{escape(group.title)}</h2>\n'
        f"<ul>\n{lines}</ul></section>\n"
    )


def _line(entry: Entry) -> str:
    words = f' data-w="{escape(" ".join(entry.words))}"' if entry.words else ""
    note = (
        f' <small class="sh-note">{escape(entry.note, quote=False)}</small>' if entry.note else ""
    )
    below = f"\n<ul>{''.join(map(_line, entry.below))}</ul>" if entry.below else ""
    link = f'<a href="../{escape(entry.address)}">{escape(entry.title, quote=False)}</a>'
    return f"<li{words}>{link}{note}{below}</li>\n"
