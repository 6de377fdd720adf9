"""Kit is drawn where body and room have it: common practice, no source."""

import re

import pytest

from strength_handbook.figures.body import STATURE
from strength_handbook.figures.chain import distance
from strength_handbook.figures.checks import impossible
from strength_handbook.figures.closeness import gap
from strength_handbook.figures.outlines import SCALE
from strength_handbook.figures.pads import pad
from strength_handbook.figures.posing import Posed, posed
from strength_handbook.figures.sheet import figure_svg, figure_words
from strength_handbook.figures.stretcher import out_of_step
from strength_handbook.model.figure import Figure, Held, Pose


def body(held: Held = "nothing", **keys: object) -> Posed:
    return posed(Pose.model_validate(keys), held)


def drawn(**keys: object) -> str:
    return figure_svg(Figure.model_validate(keys), "Kit")


STAND = {"pose": "standing"}


def test_one_dumbbell_is_drawn_once_and_the_far_arm_stays_as_it_was() -> None:
    up = {"pose": "standing", "arms": "overhead"}
    one, two = (drawn(holds=held, start=up, turn=up) for held in ("dumbbell", "dumbbells"))
    assert 2 * one.count('class="kit"') == two.count('class="kit"') == 4
    points = body("dumbbell", **up).points
    assert points["far hand"][1] < points["hip"][1] < points["head"][1] < points["hand"][1]


def test_the_balance_goes_to_the_hand_that_holds_the_dumbbell() -> None:
    ahead = {"pose": "standing", "shoulder": 90, "far-shoulder": 0, "knee": 170}
    free, loaded = (body(held, **ahead).points["hip"][0] for held in ("nothing", "dumbbell"))
    assert loaded < free


@pytest.mark.parametrize(
    ("thing", "lean", "front"), [("chest-rest", 45, 1), ("adjustable-bench", -60, -1)]
)
def test_a_pad_lies_along_the_trunk_and_touches_it(thing: str, lean: int, front: int) -> None:
    points = body(pose="seated", ground="45 cm", lean=lean, knee=90, hip=120).points
    for end in pad(thing, points):
        assert 0.0 < gap(end, points["hip"], points["head"], 0.05, 0.05) < 0.08
        (hip_x, hip_y), (x, y) = points["hip"], points["shoulder"]
        side = (end[1] - hip_y) * (x - hip_x) - (end[0] - hip_x) * (y - hip_y)
        assert side * front < 0


@pytest.mark.parametrize("pulley", [45, 90, 130, 210])
def test_a_column_is_as_tall_as_its_pulley_needs(pulley: int) -> None:
    column = {"thing": "cable-column", "height": f"{pulley} cm", "at": 90}
    svg = drawn(holds="cable", things=[column], start=STAND, turn=STAND)
    high = max(int(one) for one in re.findall(r'class="thing"[^>]*height="(\d+)"', svg))
    assert pulley / 100 / STATURE * SCALE < high
    assert (high > 215) == (pulley > 104)


@pytest.mark.parametrize("at", [-120, 120])
def test_a_column_stands_beyond_its_pulley(at: int) -> None:
    column = {"thing": "cable-column", "height": "100 cm", "at": at}
    svg = drawn(holds="cable", things=[column], start=STAND, turn=STAND)
    left = int(re.findall(r'class="thing" x="(-?\d+)"', svg)[0])
    pulley = at / 100 / STATURE * SCALE
    assert left > pulley if at > 0 else left + 34 < pulley


def test_two_straps_meet_at_their_anchor() -> None:
    back = {"pose": "standing", "knee": 178, "hip": 178, "ankle": 130, "shoulder": 90}
    keys = {
        "holds": "strap",
        "things": [{"thing": "anchor", "height": "215 cm", "at": 45}],
        "start": back,
        "turn": back,
    }
    straps = re.findall(r'class="cord" d="M[^L"]*L([-\d ]+)M[^L"]*L([-\d ]+)"', drawn(**keys))
    place = f"{45 / 100 / STATURE * SCALE:.0f} {-2.15 / STATURE * SCALE:.0f}"
    assert straps == [(place, place)] * 2
    assert "a strap in each hand" in figure_words(Figure.model_validate(keys), "Row")


def test_a_straight_bar_is_one_round_bar_in_the_fist() -> None:
    hang = {"pose": "hanging", "hands": "220 cm"}
    svg = drawn(holds="pull-up-bar", start=hang, turn=hang)
    high = round(-2.2 / STATURE * SCALE)
    bars = re.findall(r'class="bar" cx="(-?\d+)" cy="(-?\d+)"', svg)
    assert bars == [("0", str(high))] * 2
    assert 'class="rod"' not in svg
    assert 'class="rod"' in drawn(holds="parallel-handles", start=hang, turn=hang)


def test_a_shrug_lifts_shoulders_and_hands_alike_and_nothing_else() -> None:
    low, high = body("nothing", **STAND), body("nothing", **STAND, shrug="8 cm")
    for name in ("shoulder", "elbow", "hand", "far hand"):
        assert distance(low.points[name], high.points[name]) == pytest.approx(
            0.08 / STATURE, abs=1e-4
        )
    for name in ("hip", "neck", "head", "knee"):
        assert high.points[name] == pytest.approx(low.points[name], abs=0.002)
    svg = drawn(holds="dumbbells", start=STAND, turn={**STAND, "shrug": "8 cm"})
    assert svg.count('class="tip"') == 1


def test_bearers_of_one_frame_walk_out_of_step() -> None:
    points = body(pose="walking").points
    other = out_of_step(points)
    assert points["heel"][0] > points["far heel"][0] + 0.1
    assert other["heel"][0] < other["far heel"][0] - 0.1
    assert out_of_step(other) == points


@pytest.mark.parametrize("faces", ["ahead", "back"])
def test_the_back_of_a_chair_is_where_it_does_not_face(faces: str) -> None:
    chair = {"thing": "chair", "height": "45 cm", "at": 100, "faces": faces}
    svg = drawn(things=[chair], start=STAND, turn=STAND)
    back, seat = re.findall(r'class="thing" x="(-?\d+)" y="(-?\d+)"', svg)[:2]
    assert int(back[1]) < int(seat[1]) == round(-0.45 / STATURE * SCALE)
    middle = 1.0 / STATURE * SCALE
    assert int(back[0]) > middle if faces == "back" else int(back[0]) < int(seat[0]) < middle


def test_who_sits_on_a_chair_may_lean_back_over_the_heels() -> None:
    sit = {"pose": "squat", "knee": 86, "ankle": 88, "lean": 0}
    one = body("nothing", **sit)
    for things, found in (([], ["falls-over"]), ([{"thing": "chair"}], [])):
        high = (one.points["hip"][1] - 0.07) * STATURE * 100
        at = one.points["hip"][0] * STATURE * 100
        beside = [{**thing, "height": f"{high:.0f} cm", "at": round(at)} for thing in things]
        figure = Figure.model_validate({"things": beside, "start": sit, "turn": sit})
        assert [wrong.slug for wrong in impossible(figure, one)] == found


def test_a_sled_that_is_pushed_has_posts_as_high_as_the_hands() -> None:
    svg = drawn(things=[{"thing": "sled", "height": "95 cm", "at": 80}], start=STAND, turn=STAND)
    (high,) = {int(one) for one in re.findall(r'class="rod" d="[^"]*V-(\d+)"', svg)}
    assert high == round(0.95 / STATURE * SCALE)


@pytest.mark.parametrize(("far", "said"), [(28, "in both hands"), (178, "in one hand")])
def test_a_weight_is_said_to_be_in_as_many_hands_as_are_on_it(far: int, said: str) -> None:
    pose = {"pose": "standing", "shoulder": 0, "elbow": 28, "far-shoulder": 0, "far-elbow": far}
    for held in ("bell", "dumbbell"):
        figure = Figure.model_validate({"holds": held, "start": pose, "turn": pose})
        assert f"with a {held} {said}." in figure_words(figure, "Squat")


@pytest.mark.parametrize(("far", "drawn_as"), [(150, "rod"), (20, "bar")])
def test_a_stick_goes_through_both_hands(far: int, drawn_as: str) -> None:
    pose = {"pose": "standing", "shoulder": 20, "elbow": 90, "far-shoulder": far, "far-elbow": 90}
    svg = drawn(holds="stick", start=pose, turn=pose)
    assert svg.count(f'class="{drawn_as}"') == 2
    if drawn_as == "rod":
        points = body("stick", **pose).points
        ((x, y, to_x, to_y), _) = re.findall(
            r'class="rod" d="M(-?\d+) (-?\d+)L(-?\d+) (-?\d+)', svg
        )
        ends = [(int(x) / SCALE, -int(y) / SCALE), (int(to_x) / SCALE, -int(to_y) / SCALE)]
        for hand in (points["hand"], points["far hand"]):
            assert gap(hand, ends[0], ends[1], 0, 0) < 0.005
