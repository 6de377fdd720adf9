"""The drawing says what the data says, and is small and self-contained."""

import re
from typing import get_args
from xml.etree import ElementTree

import pytest

import demo
from strength_handbook.checked import check_folder
from strength_handbook.figures.body import STATURE
from strength_handbook.figures.chain import distance
from strength_handbook.figures.outlines import SCALE
from strength_handbook.figures.sheet import figure_svg, moments
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.figure import Figure, Held, Pose

BOOK = check_folder(demo.ROOT / "programs", "programs").worked
DRAWN: dict[str, Exercise] = (
    {key: one for key, one in BOOK.book.exercises.items() if one.figure} if BOOK else {}
)


def svg_of(exercise: Exercise) -> str:
    assert exercise.figure is not None
    return figure_svg(exercise.figure, exercise.name)


def test_there_are_figures() -> None:
    assert len(DRAWN) >= 31


@pytest.mark.parametrize("key", sorted(DRAWN))
def test_a_figure_is_well_formed_small_and_asks_for_nothing(key: str) -> None:
    svg = svg_of(DRAWN[key])
    ElementTree.fromstring(svg)  # noqa: S314  # our own text
    assert len(svg.encode()) <= 10_000
    assert "http" not in svg
    assert "nan" not in svg
    assert " id=" not in svg


@pytest.mark.parametrize("key", sorted(DRAWN))
def test_the_asked_angle_in_the_drawing_is_that_of_the_joints(key: str) -> None:
    exercise = DRAWN[key]
    assert exercise.figure is not None
    said = re.findall(r'class="deg"[^>]*>(\d+)°', svg_of(exercise))
    turn = moments(exercise.figure)[1].shape
    if exercise.figure.angle is None:
        assert said == []
    elif exercise.figure.angle in ("knee", "hip"):
        drawn = getattr(turn.near, exercise.figure.angle)
        assert [int(number) for number in said] == [round(min(drawn, 360 - drawn))]


@pytest.mark.parametrize(
    "key", sorted(key for key, one in DRAWN.items() if one.figure and one.figure.angle)
)
def test_a_drawn_angle_is_one_that_the_coach_asks_for(key: str) -> None:
    exercise = DRAWN[key]
    (drawn,) = re.findall(r'class="deg"[^>]*>(\d+)°', svg_of(exercise))
    assert f"{drawn}°" in exercise.poses.turn


def test_a_swing_begins_where_the_hands_were_and_ends_before_the_bell() -> None:
    exercise = DRAWN["kettlebell-swing"]
    assert exercise.figure is not None
    start, turn = moments(exercise.figure)
    numbers = [int(n) for n in re.findall(r"-?\d+", _way(svg_of(exercise)))]
    (from_x, from_y), (x, y) = start.points["hand"], turn.points["hand"]
    assert (numbers[0] / SCALE, -numbers[1] / SCALE) == pytest.approx((from_x, from_y), abs=0.005)
    short = distance((numbers[-2] / SCALE, -numbers[-1] / SCALE), (x, y))
    assert 0.06 < short < 0.12  # its tip stays off hands and bell


@pytest.mark.parametrize("held", get_args(Held))
def test_whatever_is_held_a_figure_in_which_nothing_moves_has_no_arrow(held: Held) -> None:
    straight = Pose(pose="standing", knee=180)
    svg = figure_svg(Figure(holds=held, angle="knee", start=straight, turn=straight), "Still")
    assert 'class="way"' not in svg
    assert "180°" in svg


def _way(svg: str) -> str:
    found = re.search(r'class="way" d="([^"]+)"', svg)
    assert found
    return found[1]


def test_the_words_say_pose_joints_and_what_is_held() -> None:
    title = re.search("<title>(.*?)</title>", svg_of(DRAWN["romanian-deadlift"]))
    assert title
    assert title[1].startswith(
        "Romanian deadlift from the side in two drawings, with a bar with plates. Start: standing, "
    )
    assert "Turn: hips back, trunk forward, knee at 150°, hip at 95°" in title[1]


def test_bearers_carry_one_frame_with_straight_arms() -> None:
    figure = DRAWN["stretcher-carry"].figure
    assert figure is not None
    svg = svg_of(DRAWN["stretcher-carry"])
    assert svg.count('class="hd"') == 2 * len(moments(figure))
    assert all(one.shape.arm.elbow > 170 for one in moments(figure))
    assert svg.count("M") > svg.count('class="rod"') == len(moments(figure))


def test_a_partner_has_a_pose_of_their_own_and_holds_the_heels() -> None:
    figure = DRAWN["nordic-lower"].figure
    assert figure is not None
    (partner,) = figure.others
    assert partner.pose is not None
    assert partner.pose.hands_at is not None
    hand = partner.at + partner.pose.hands_at
    for one in moments(figure):
        heel, ankle = (one.points[name][0] * STATURE * 100 for name in ("heel", "ankle"))
        assert min(heel, ankle) - 10 < hand < max(heel, ankle) + 10
