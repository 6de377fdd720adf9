"""Arrows and numbers stand where no limb is."""

import re

import pytest
import yaml

import demo
from strength_handbook.figures.chain import Points, distance
from strength_handbook.figures.clearance import beside, clear, row
from strength_handbook.figures.marks import angle, number_place
from strength_handbook.figures.outlines import SCALE
from strength_handbook.figures.posing import posed
from strength_handbook.figures.pulling import cord
from strength_handbook.figures.sheet import figure_svg, moments
from strength_handbook.model.figure import Figure, Pose


def body(**keys: object) -> Points:
    return posed(Pose.model_validate(keys), "nothing").points


def test_a_way_over_a_body_is_moved_beside_it_and_keeps_its_length() -> None:
    points = body(pose="standing")
    way = [(0.03, 0.2), (0.03, 0.5)]
    moved = beside(way, [points], ahead=True)
    assert all(clear(point, [points]) > 0.02 for point in moved)
    assert moved[0][1] == pytest.approx(0.2)
    assert distance(*moved) == pytest.approx(distance(*way))
    assert moved[0][0] > way[0][0]  # ahead of the lifter, who looks that way


def test_a_way_in_free_space_stays() -> None:
    way = [(0.6, 0.2), (0.6, 0.5)]
    assert beside(way, [body(pose="standing")]) == way


def test_a_way_keeps_off_plates_as_well() -> None:
    plate = ((0.6, 0.4), 0.129)
    (x, _), _ = beside([(0.6, 0.2), (0.6, 0.4)], [body(pose="standing")], [plate])
    assert abs(x - 0.6) > 0.129


def test_an_arc_is_drawn_where_it_shows_and_left_out_where_a_load_lies_across_it() -> None:
    points = body(pose="squat", knee=90, lean=20, ankle=80, shoulder=90)
    assert 'class="arc"' in angle("knee", points, [points], ())
    x, y = points["knee"]
    behind = angle("knee", points, [points], [((x - 0.09, y - 0.08), 0.07)])
    assert 'class="arc"' not in behind
    assert "90°" in behind


def drawn_points(svg: str) -> list[tuple[float, float]]:
    ways = re.findall(r'class="way" d="M([^"]+)"', svg)
    pairs = [re.findall(r"(-?\d+) (-?\d+)", way) for way in ways]
    return [(int(x) / SCALE, -int(y) / SCALE) for way in pairs for x, y in way]


@pytest.mark.parametrize("key", sorted(demo.EXERCISES))
def test_no_arrow_begins_or_ends_on_hand_load_line_or_body(key: str) -> None:
    figure = yaml.safe_load((demo.PROGRAMS / "exercises" / f"{key}.yml").read_text()).get("figure")
    if figure is None or figure.get("holds") == "bell":  # a swing goes from between the thighs
        return
    drawn = Figure.model_validate(figure)
    panels = figure_svg(drawn, key).split('class="when"')
    for one, svg in zip(moments(drawn), panels, strict=False):
        line = cord(drawn, one)
        lines = row(line, 0.0) if line else []
        for place in drawn_points(svg):
            assert clear(place, [one.points], lines) > 0.02


@pytest.mark.parametrize("knee", [60, 90, 125, 150])
def test_a_number_stands_clear_of_every_limb(knee: int) -> None:
    points = body(pose="squat", knee=knee, lean=20, ankle=80)
    svg = angle("knee", points, [points], ())
    said = re.search(r'x="(-?\d+)" y="(-?\d+)">(\d+)°', svg)
    assert said
    x, y, number = map(int, said.groups())
    assert number == knee
    assert clear((x / SCALE, (7 - y) / SCALE), [points]) > 0.07


def test_a_number_without_room_has_the_place_with_most_of_it() -> None:
    points = body(pose="standing")
    wall = [((0.0, 0.5), 3.0)]
    place = number_place(points["knee"], 0.0, [points], wall)
    assert clear(place, [points], wall) < 0


def test_a_way_beside_a_line_keeps_off_its_whole_length() -> None:
    line = [(0.5, 0.5), (1.5, 0.5)]
    moved = beside([(1.2, 0.5), (0.9, 0.5)], [body(pose="standing")], row(line, 0.012))
    assert min(y for _, y in moved) > 0.53  # above it, all along
    crossing = beside([(0.7, 0.4), (0.7, 0.6)], [body(pose="standing")], row(line, 0.012))
    assert clear((0.7, 0.5), [body(pose="standing")], row(line, 0.012)) < 0.01
    (x, low), (_, high) = crossing
    assert x < 0.47 or high < 0.47 or low > 0.53
