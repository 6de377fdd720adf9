"""Drawn moments show where a coach wants body and load: common practice, no source."""

import re

import pytest

import demo
from strength_handbook.checked import check_folder
from strength_handbook.figures.bag import bag_place
from strength_handbook.figures.bars import FRAME, HUB, TRAP_BARS, bar_place, yoke_spine
from strength_handbook.figures.body import ANKLE_HEIGHT, SHANK, STATURE
from strength_handbook.figures.chain import distance
from strength_handbook.figures.flesh import LINE, parts
from strength_handbook.figures.outlines import SCALE
from strength_handbook.figures.posing import Posed, posed
from strength_handbook.figures.pulling import cord, pulled_along
from strength_handbook.figures.sheet import figure_svg, moments
from strength_handbook.figures.things import edges
from strength_handbook.figures.way import way_of
from strength_handbook.model.figure import BasePose, Figure, Pose

FACE = 0.066
"""From the middle of the head ahead to the nose, statures, as it is drawn."""
CHIN = 0.060
"""From the middle of the head down to the chin, statures, as it is drawn."""


def figure_of(key: str) -> Figure:
    book = check_folder(demo.ROOT / "programs", "programs").worked
    assert book is not None
    figure = book.book.exercises[key].figure
    assert figure is not None
    return figure


def start_and_turn(key: str) -> tuple[Posed, Posed]:
    start, turn = moments(figure_of(key))[:2]
    return start, turn


def test_a_bell_is_hiked_back_between_the_thighs_above_the_knees() -> None:
    start, _ = start_and_turn("kettlebell-swing")
    hand, knee, hip = (start.points[name] for name in ("hand", "knee", "hip"))
    assert hand[0] < hip[0] < knee[0]
    assert knee[1] < hand[1] < hip[1]


def test_a_bell_that_is_lifted_has_its_arrow_beside_it() -> None:
    start = {"pose": "hinge", "knee": 120, "hands": "26 cm", "hands-at": 19}
    turn = {"pose": "standing", "shoulder": 13}
    figure = Figure.model_validate({"holds": "bell", "start": start, "turn": turn})
    (way,) = re.findall(r'class="way" d="M([^"]+)"', figure_svg(figure, "Lift"))
    x, y = (int(number) for number in way.rsplit("L", 1)[1].split())
    hand = moments(figure)[1].points["hand"]
    assert distance((x / SCALE, -y / SCALE), (hand[0], hand[1] - 0.06)) > 0.1


def test_hands_between_the_thighs_are_drawn_before_the_near_leg() -> None:
    svg = figure_svg(figure_of("kettlebell-swing"), "Swing")
    start, turn = svg.split('class="when"')[:2]
    assert start.index('class="grip"') < start.rindex('class="legs"')
    assert turn.index('class="grip"') > turn.rindex('class="legs"')


def test_a_yoke_lies_on_the_upper_back_with_its_handles_below_the_jaw() -> None:
    for one in start_and_turn("yoke-bar-box-squat"):
        at = yoke_spine(one.points)
        (hip_x, hip_y), (x, y) = one.points["hip"], one.points["shoulder"]
        along_trunk = (at[0] - x) * (x - hip_x) + (at[1] - y) * (y - hip_y)
        assert along_trunk <= 1e-9
        assert at[0] < x - HUB
        assert one.points["hand"][1] < one.points["head"][1] - CHIN


def test_the_plates_of_a_yoke_are_at_the_line_of_the_shoulders_over_the_foot() -> None:
    figure = figure_of("yoke-bar-box-squat")
    for one in moments(figure):
        at = bar_place(one.points, "yoke-bar")
        assert at is not None
        assert distance(at, one.points["shoulder"]) < 0.03
        assert one.points["heel"][0] < at[0] < one.points["ball"][0]
    for svg in figure_svg(figure, "Squat").split('class="when"')[:2]:
        assert svg.index('class="hd"') < svg.index('class="rim"')


def test_a_sled_follows_its_strap_and_the_lifter_goes_backwards() -> None:
    figure = figure_of("backward-sled-drag")
    start, turn = moments(figure)
    (before,), (after,) = pulled_along(figure, start), pulled_along(figure, turn)
    went = (turn.points["hip"][0] - start.points["hip"][0]) * STATURE * 100
    assert went < -30
    assert after.at - before.at == pytest.approx(went, abs=3)


@pytest.mark.parametrize("key", ["rope-sled-pull", "backward-sled-drag"])
def test_a_tight_line_keeps_its_length_and_brings_the_sled_along(key: str) -> None:
    figure = figure_of(key)
    start, turn = moments(figure)
    before, after = cord(figure, start), cord(figure, turn)
    length, other = (distance(line[0], line[-1]) for line in (before, after))
    assert other == pytest.approx(length, abs=0.01)
    assert after[-1][0] < before[-1][0] - 0.3
    svg = figure_svg(figure, "Pull")
    assert svg.count('class="cord"') == 2


def test_a_rope_runs_over_the_far_hand_in_nearly_one_line_and_its_slack_is_on_the_floor() -> None:
    figure = figure_of("rope-sled-pull")
    _, turn = moments(figure)
    near, far, hook = cord(figure, turn)
    assert distance(near, far) + distance(far, hook) < 1.02 * distance(near, hook)
    start, pulled = re.findall(r'class="cord" d="([^"]+)"', figure_svg(figure, "Pull"))
    assert "-9m0 0a" in pulled
    assert "-9m0 0a" not in start
    (heap,) = re.findall(r"(-?\d+)-9m0 0a", pulled)
    feet = [turn.points[side + "heel"][0] for side in ("", "far ")]
    assert int(heap) / SCALE < min(feet) - 0.1  # no foot gets into a loop
    assert turn.points["shoulder"][0] < turn.points["heel"][0]


def test_a_bag_on_a_shoulder_is_nearer_than_the_body_and_touches_it_and_both_hands() -> None:
    figure = figure_of("sandbag-to-shoulder")
    last = moments(figure)[2]
    x, y = bag_place(last.points, last.pose)
    shoulder = last.points["shoulder"]
    assert (x, y) == pytest.approx(shoulder, abs=0.06)
    for hand in ("hand", "far hand"):
        assert distance(last.points[hand], (x, y)) < 0.19  # half of its length over a shoulder
    svg = figure_svg(figure, "Bag").split('class="when"')[2]
    assert svg.index('class="top"') < svg.index('class="kit"') < svg.rindex('class="arm"')


def test_a_bridge_has_its_hips_on_one_line_and_their_arrow_under_them() -> None:
    _, turn = start_and_turn("hamstring-bridge-hold")
    assert 180 <= turn.shape.near.hip <= 190
    svg = figure_svg(figure_of("hamstring-bridge-hold"), "Bridge")
    (way,) = re.findall(r'class="way" d="M([^"]+)"', svg)
    (x, low), (to_x, high) = (map(int, point.split()) for point in way.split("L"))
    assert x == to_x
    assert 0 > low > high > -turn.points["hip"][1] * SCALE


@pytest.mark.parametrize(
    ("pose", "of"), [("on-back", "back"), ("bridge", "back"), ("kneeling", "knee")]
)
def test_what_lies_or_kneels_touches_the_floor_with_its_outline(pose: BasePose, of: str) -> None:
    one = posed(Pose(pose=pose), "nothing")
    lows = dict(parts(one.points))
    assert min(lows[of], lows["shin"]) == pytest.approx(LINE, abs=1e-6)
    assert min(lows.values()) >= LINE - 0.001


@pytest.mark.parametrize("key", ["overcoming-press", "overcoming-trap-bar-pull"])
def test_a_push_against_pins_ends_at_the_pin_that_the_bar_touches(key: str) -> None:
    figure = figure_of(key)
    svg = figure_svg(figure, "Push")
    ((left, stop, wide),) = re.findall(r'class="push" d="M(-?\d+) (-?\d+)h(\d+)', svg)
    assert -int(stop) in {round(thing.height / STATURE * SCALE) for thing in figure.things}
    at = bar_place(moments(figure)[1].points, figure.holds)
    assert at is not None
    end = FRAME if figure.holds in TRAP_BARS else -HUB * SCALE  # what the stop is over
    assert int(left) < at[0] * SCALE + end < int(left) + int(wide)
    assert 'class="way"' not in svg


@pytest.mark.parametrize("key", ["overcoming-press", "overcoming-trap-bar-pull"])
def test_a_push_is_one_drawing_behind_the_near_side_of_its_rack(key: str) -> None:
    svg = figure_svg(figure_of(key), "Push")
    assert svg.count('class="hd"') == svg.count('class="when"') == svg.count('class="fast"') == 1
    assert "in one drawing" in svg
    assert "Nothing moves" in svg
    assert svg.rindex('class="hand"') < svg.index('class="pin"')


@pytest.mark.parametrize("key", ["farmer-carry", "suitcase-carry", "stretcher-carry"])
def test_a_carry_goes_ahead(key: str) -> None:
    (way,) = re.findall(r'class="way" d="M([^"]+)"', figure_svg(figure_of(key), "Carry"))
    (x, y), (to_x, to_y) = (map(int, point.split()) for point in way.split("L"))
    assert to_x > x + 0.2 * SCALE
    assert to_y == y


def test_the_rear_foot_of_a_split_squat_stays_and_the_start_is_taller() -> None:
    start, turn = start_and_turn("split-squat-hold")
    assert start.points["far ball"][0] == pytest.approx(turn.points["far ball"][0], abs=0.005)
    assert start.points["hip"][1] > turn.points["hip"][1] + 0.12


def test_the_whole_standing_foot_is_on_the_box() -> None:
    figure = figure_of("step-down")
    (box,) = figure.things
    left, right = edges(box)
    for one in moments(figure):
        assert left < one.points["heel"][0] < one.points["toe"][0] < right


def test_a_pivoted_bar_ends_in_its_socket() -> None:
    svg = figure_svg(figure_of("landmine-push-press"), "Press")
    ends = re.findall(r'class="rod" d="M-?\d+ -?\d+L(-?\d+) (-?\d+)"', svg)
    assert ends == re.findall(r'class="roll" cx="(-?\d+)" cy="(-?\d+)"', svg)
    assert len(ends) == 2


def test_a_jump_is_an_arc_of_the_feet_up_to_the_box() -> None:
    figure = figure_of("box-jump")
    _, turn, end = moments(figure)
    way = way_of(turn, end, figure)
    assert max(y for _, y in way) > way[-1][1] > way[0][1]
    assert distance(way[-1], end.points["heel"]) < 0.1


def test_moments_below_each_other_have_one_left_edge() -> None:
    svg = figure_svg(figure_of("backward-sled-drag"), "Drag")
    first, second = re.findall(r'<g transform="translate\((-?\d+) ', svg)
    assert first == second


def test_forearms_are_upright_under_a_pushed_bar_close_to_the_face() -> None:
    for one in start_and_turn("overcoming-press"):
        assert one.points["elbow"][0] == pytest.approx(one.points["hand"][0], abs=0.03)
        assert one.points["shoulder"][0] + 0.06 < one.points["elbow"][0]
        face = one.points["head"][0] + FACE
        assert face - 0.02 < one.points["hand"][0] < face + 0.06
        assert one.points["hand"][0] < one.points["toe"][0]


def test_the_chin_comes_over_the_hands() -> None:
    _, turn = start_and_turn("neutral-grip-pull-up")
    assert turn.points["head"][1] - CHIN > turn.points["hand"][1]


def test_a_bar_goes_straight_down_in_front_of_the_shin() -> None:
    start, turn = start_and_turn("romanian-deadlift")
    hand, knee = turn.points["hand"], turn.points["knee"]
    assert hand[0] - knee[0] > HUB + 0.03
    assert hand[0] == pytest.approx(start.points["hand"][0], abs=0.03)


def test_toes_stay_flat_when_the_heel_is_below_them() -> None:
    one = posed(Pose.model_validate({"pose": "standing", "ground": "20 cm", "heel": -18}), "wall")
    assert one.points["toe"][1] == pytest.approx(one.points["ball"][1])
    assert one.points["heel"][1] < one.points["ball"][1]


def test_who_lies_on_a_frame_lies_between_the_bearers() -> None:
    svg = figure_svg(figure_of("stretcher-carry"), "Carry")
    start, turn = moments(figure_of("stretcher-carry"))
    heads = re.findall(r'<circle class="thing" cx="(-?\d+)"', svg)
    for one, head in zip((start, turn), heads, strict=True):
        assert int(head) / 360 > one.points["hand"][0] + SHANK - ANKLE_HEIGHT


def test_an_arrow_stays_above_the_floor() -> None:
    for key in ("cable-row", "rope-sled-pull", "backward-sled-drag"):
        (way,) = re.findall(r'class="way" d="M([^"]+)"', figure_svg(figure_of(key), "Pull"))
        assert max(int(point.split()[1]) for point in way.split("L")) < 0


def test_hands_on_the_frame_of_a_slanted_bench_are_on_its_handle() -> None:
    figure = figure_of("back-extension-hold")
    start, _ = moments(figure)
    drawn = figure_svg(figure, "Hold").split('class="when"')[0]
    ((left, up, right),) = re.findall(r'class="pin" d="M(-?\d+) (-?\d+)L(-?\d+) ', drawn)
    x, y = start.points["hand"]
    assert int(left) + 10 < x * SCALE < int(right) - 10  # a fist shows the handle on both sides
    assert -int(up) / SCALE == pytest.approx(y, abs=0.005)
    assert y < start.points["shoulder"][1] < start.points["hip"][1]
