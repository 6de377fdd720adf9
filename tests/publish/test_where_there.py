"""The coach's pages name hand-written pages only in a handbook that has them."""

import pytest

import demo
from strength_handbook.checked import check_folder
from strength_handbook.pages.coach.drafts import coach_pages
from strength_handbook.publish.where_there import where_there


@pytest.mark.parametrize("sources", [set(), {"for-coaches/index.md", "for-coaches/accept.md"}])
def test_links_to_the_tasks_stand_where_the_tasks_do(sources: set[str]) -> None:
    pages = coach_pages(check_folder(demo.PROGRAMS))
    texts = "".join(where_there(page.html, sources) for page in pages)
    for said in ("for-coaches/accept/", "the tasks</a>"):
        assert (said in texts) == bool(sources)
    assert "<!--where" not in texts
    assert "<!--end" not in texts
