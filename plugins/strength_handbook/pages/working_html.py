"""A working as HTML: closed until somebody wants to know."""

from strength_handbook.pages.page import link
from strength_handbook.pages.render import render
from strength_handbook.workings.working import Line, Working, formulas

NUMBERS = "numbers/"


def working_html(working: Working | None, url: str) -> str:
    """The working of a figure, with a link from every formula to its entry; empty without one.

    A formula's source and error are printed with its first step only.

    Args:
        working: what to show.
        url: address of the page it stands on.
    """
    if working is None:
        return ""
    numbers = link(url, NUMBERS)
    seen: set[str] = set()
    rows = []
    for line in working.lines:
        known = line.formula in seen
        seen.add(line.formula or line.text)
        rows.append(_row(line, numbers, short=known))
    return render("working.html", {"working": working, "rows": rows})


def _row(line: Line, numbers: str, *, short: bool) -> dict[str, str]:
    return {
        "text": line.text,
        "link": f"{numbers}#{line.formula}" if line.formula else "",
        "title": formulas()[line.formula].title if line.formula else "",
        "evidence": line.evidence,
        "source": "" if short else line.source.rstrip("."),
        "error": "" if short else line.error.rstrip("."),
    }
