"""The chart of the waves: what is drawn is what was counted, and it is said in words."""

import re
import xml.etree.ElementTree as ET

import pytest
from hypothesis import given
from hypothesis import strategies as st

import demo
from strength_handbook.model.book import Book
from strength_handbook.pages.week_page import ROWS, waves_html
from strength_handbook.pictures.waves import WaveColumn, WaveRow, wave_chart
from strength_handbook.plan.work_out import work_out
from strength_handbook.reading.book import read_book

ROW = 40
"""Height of a row in the figure, of its fullest week."""


def figure_of(chart: str) -> ET.Element:
    found = re.search("<svg.*</svg>", chart)
    assert found is not None
    return ET.fromstring(found[0])  # noqa: S314 -- our own figure


def drawn(chart: str) -> list[dict[int, float]]:
    """Heights by week, row after row, read from the figure."""
    rows: list[dict[int, float]] = []
    for bar in figure_of(chart).iter("rect"):
        week = int(bar.attrib["data-week"])
        if not rows or week in rows[-1]:
            rows.append({})
        rows[-1][week] = float(bar.attrib["height"])
    return rows


@given(st.lists(st.integers(0, 5000), min_size=1, max_size=30))
def test_heights_are_shares_of_the_fullest_week(values: list[int]) -> None:
    columns = [WaveColumn(3 + place, "Slow") for place in range(len(values))]
    chart = wave_chart(
        columns,
        [WaveRow("hold", "Seconds", values), WaveRow("none", "Naught", [0.0] * len(values))],
    )
    if not any(values):
        assert chart == ""
        return
    (heights,) = drawn(chart)
    assert list(heights) == [column.week for column in columns]
    for height, value in zip(heights.values(), values, strict=True):
        assert height == pytest.approx(ROW * value / max(values), abs=0.01)


def test_the_demo_s_chart_is_its_volume() -> None:
    book = read_book(demo.PROGRAMS).book
    assert isinstance(book, Book)
    (program,) = work_out(book).programs
    chart = str(waves_html(program))
    for row, (_, counts, key, _unit) in zip(drawn(chart), ROWS, strict=True):
        values = [float(getattr(week.volume, key)) for week in program.weeks]
        back = [height / ROW * max(values) for height in row.values()]
        assert back == pytest.approx(values, abs=max(values) * 0.01 / ROW * 1.01)
        said = re.search(rf"{counts}: ([^.]+)\.", chart)
        assert said is not None
        numbers = [int(part.split()[-1]) for part in said[1].split(",")]
        assert numbers == [round(value) for value in values]


def test_everything_drawn_stays_in_the_figure() -> None:
    """Names of waves are cut, not drawn over each other; text of a coach's stays text."""
    columns = [WaveColumn(1, "A <very> long name of a wave"), WaveColumn(2, "B", quiet=True)]
    chart = wave_chart(columns, [WaveRow("<b>", "Seconds & more", [1.0, 2.0])])
    figure = figure_of(chart)

    names = [text.text for text in figure.iter("text")]
    assert names == ["<b>", "1", "2", "A…", "B"]
    width, height = (float(one) for one in figure.attrib["viewBox"].split()[2:])
    for bar in figure.iter("rect"):
        at = {key: float(bar.attrib[key]) for key in ("x", "y", "width", "height")}
        assert 0 <= at["x"] <= at["x"] + at["width"] <= width
        assert 0 <= at["y"] <= at["y"] + at["height"] <= height
    assert [bar.attrib.get("class") for bar in figure.iter("rect")] == [None, "is-quiet"]
