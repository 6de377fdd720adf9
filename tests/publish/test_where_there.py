"""The coach's pages name hand-written pages only in a handbook that has them."""

from mkdocs.config import load_config
from mkdocs.structure.files import File, Files

import demo
from strength_handbook.checked import check_folder
from strength_handbook.pages.coach.drafts import coach_pages
from strength_handbook.plugin_files import put_pages


def test_links_to_the_tasks_stand_where_the_tasks_do() -> None:
    config = load_config(str(demo.ROOT / "mkdocs.yml"))
    checked = check_folder(demo.PROGRAMS)
    for pages in ([], ["for-coaches/index.md", "for-coaches/accept.md"]):
        files = Files([File.generated(config, uri, content="") for uri in pages])
        texts = "".join(
            page.html for page in put_pages(files, coach_pages(checked), config).values()
        )
        assert ("for-coaches/accept/" in texts) == bool(pages)
        assert ("the tasks</a>" in texts) == bool(pages)
        assert "<!--" not in texts
