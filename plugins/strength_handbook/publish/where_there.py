"""Mentions of hand-written pages, which stand only in a handbook that has them.

Save it.<!--where for-coaches/index.md--> More: <a href="/for-coaches/">the tasks</a>.<!--end-->
"""

import re
from collections.abc import Container

_MENTION = re.compile(r"<!--where ([^ ]+?)-->(.*?)<!--end-->", re.DOTALL)


def where_there(html: str, sources: Container[str]) -> str:
    """A page with what it says of hand-written pages, or without.

    Args:
        html: of a generated page.
        sources: the handbook's hand-written files, by their paths in its folder.

    >>> where_there("Save.<!--where a.md--> <a href='/a/'>More</a>.<!--end-->", {"b.md"})
    'Save.'
    >>> where_there("Save.<!--where a.md--> <a href='/a/'>More</a>.<!--end-->", {"a.md"})
    "Save. <a href='/a/'>More</a>."
    """
    return _MENTION.sub(lambda found: found[2] if found[1] in sources else "", html)
