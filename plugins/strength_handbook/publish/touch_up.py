"""Last touches on a finished HTML page: names for screen readers, its paper, problems in a banner.

The theme leaves two landmarks without a name and gives two others the same one (found with
axe-core, rules `aria-dialog-name` and `landmark-unique`). The names are set here, in the text, so
that no theme template is copied.
"""

import re
from collections.abc import Collection, Sequence
from html import escape

from minify_html import minify

from strength_handbook.checked import counted
from strength_handbook.model.paper import A4, Paper
from strength_handbook.reading.problem import Problem

_NAMES = (
    ('data-md-component="search" role="dialog"', ' aria-label="Search"'),
    ('<nav class="md-tags"', ' aria-label="Tags"'),
)
# A section with a front page of its own has its label's id on an empty label beside the link.
_SECTION = re.compile(r'(<label class="md-nav__link " for="(__nav_[\d_]+)") id="\2_label"')
_GAP = re.compile(r"[ \t]*\n\s*")
_PATH = '<nav class="md-path" aria-label="Navigation"'
_PATH_NAMED = '<nav class="md-path" aria-label="Path to this page"'
_BANNER_PLACE = '<div class="md-container"'

# Only ever seen by the coach in `mkdocs serve`, also where no stylesheet of ours is in use.
_STYLE = "margin:0;padding:1rem;background:#7f1d1d;color:#fff;font:1rem/1.4 sans-serif"


def touched_up(html: str, paper: Paper = A4, banner: str = "") -> str:
    """The page with all of this; `packed` is for some only.

    Args:
        html: as MkDocs and its theme have made it.
        paper: what it is printed on.
        banner: stands above its content; empty where nothing is wrong.
    """
    html = on_paper(without_gaps(name_landmarks(html)), paper)
    return with_banner(html, banner) if banner else html


def name_landmarks(html: str) -> str:
    """The page with names for the search dialog, the tags, the path, and each part of the nav."""
    for place, name in _NAMES:
        html = html.replace(place, place + name)
    html = html.replace(_PATH, _PATH_NAMED)
    for found in _SECTION.finditer(html):
        title = f'<label class="md-nav__title" for="{found[2]}"'
        html = html.replace(title, f'{title} id="{found[2]}_label"')
    return _SECTION.sub(r"\1", html)


def on_paper(html: str, paper: Paper) -> str:
    """The page with its paper's class on the body.

    >>> from strength_handbook.model.paper import LETTER
    >>> on_paper('<body dir="ltr">', LETTER), on_paper('<body dir="ltr">', A4)
    ('<body class="sh-letter" dir="ltr">', '<body dir="ltr">')
    """
    return html.replace("<body ", f"<body{paper_class(paper)} ", 1)


def paper_class(paper: Paper) -> str:
    """What tells the styles the paper; they take A4 where nothing does."""
    return "" if paper == A4 else f' class="sh-{paper.key}"'


def without_gaps(html: str) -> str:
    r"""The page without the theme's empty lines and indents around the content.

    The content itself stays as it is: a `<pre>` means its spaces.

    >>> without_gaps("<a>\n\n   <b>\n<article>\n  <p>\n</article>\n   </a>")
    '<a>\n<b>\n<article>\n  <p>\n</article>\n</a>'
    """
    start, end = html.find("<article"), html.rfind("</article>")
    if start < 0 or end < 0:
        return html
    return _GAP.sub("\n", html[:start]) + html[start:end] + _GAP.sub("\n", html[end:])


def packed(html: str) -> str:
    """The page in fewer letters, to the same effect: for those that are read with a bad signal.

    Spaces between words go only where they are not seen: right inside a block such as a `<div>`.

    >>> packed('<table><tr><td class="a">1</td> <td>2</td></tr></table> <p><b>x</b> <b>y</b></p>')
    '<table><tr><td class=a>1<td>2</table><p><b>x</b> <b>y</b>'
    """
    return minify(html)


def with_banner(html: str, banner: str) -> str:
    """The page with the banner above its content."""
    return html.replace(_BANNER_PLACE, banner + _BANNER_PLACE, 1)


def problem_banner(problems: Sequence[Problem], held: Collection[str]) -> str:
    """What stands above every page while files have errors.

    Args:
        problems: all of them.
        held: files that are shown as they were before; none where all is.
    """
    says = f"{counted(len(problems), 'error')}: you see the last state without errors."
    if held:
        files = ", ".join(sorted(held))
        says = (
            f"{counted(len(problems), 'error')}: {files} stands here as before the error, or not "
            "yet; all else is as you saved it."
        )
    return (
        f'<div role="alert" class="sh-problems" style="{_STYLE}">'
        f"<p><strong>{escape(says)}</strong></p>{problem_list(problems)}</div>\n"
    )


def problem_page(problems: Sequence[Problem]) -> str:
    """The only page there is where nothing has ever been without errors."""
    says = "The handbook can't be shown yet. Mend these and save; the page reloads by itself."
    return (
        f'<div role="alert"><h1 id="problems">{counted(len(problems), "error")}</h1>'
        f"<p>{says}</p>{problem_list(problems)}</div>"
    )


def problem_list(problems: Sequence[Problem]) -> str:
    """Problems as a list, each with its place."""
    items = "".join(
        f"<li><code>{escape(f'{problem.file}:{problem.line}:{problem.column}')}</code> "
        f"{escape(problem.text)}</li>"
        for problem in problems
    )
    return f"<ul>{items}</ul>"
