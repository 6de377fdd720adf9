"""What is taken out of a page comes back in its place."""

from hypothesis import given
from hypothesis import strategies as st

import demo
from strength_handbook.checked import check_folder
from strength_handbook.pages.site import write_pages
from strength_handbook.publish.set_aside import with_tables, without_tables

PIECES = st.lists(
    st.sampled_from(
        [
            "<p>text</p>",
            '<table class="sh-strip"><tr><td>1</td></tr></table>',
            '<table class="sh-grid wide"><tr></tr></table>',
            "<table><tr><td>plain</td></tr></table>",
            '<details class="sh-working" data-search-exclude><summary>How</summary>2</details>',
            "<details><summary>Other</summary>3</details>",
        ]
    )
)


@given(PIECES)
def test_out_and_back_is_the_same(pieces: list[str]) -> None:
    html = "\n".join(pieces)
    rest, tables = without_tables(html)
    assert with_tables(rest, tables) == html
    assert len(tables) == sum("sh-" in piece for piece in pieces)


def test_every_page_of_the_demo_comes_back_whole() -> None:
    worked = check_folder(demo.PROGRAMS).worked
    assert worked is not None
    taken = 0
    for page in write_pages(worked).pages:
        rest, tables = without_tables(page.html)
        taken += len(tables)
        assert with_tables(rest, tables) == page.html
        assert "sh-working" not in rest
        assert rest.count("<details") == rest.count("</details>")
    assert taken > 100
