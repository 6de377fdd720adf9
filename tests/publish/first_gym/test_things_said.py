"""Machines, cable columns and all other things of a room in one line."""

import pytest

from strength_handbook.publish.first_gym.things_said import read_things, things_words


def spelled(line: str, unit: str = "kg") -> str:
    found, wrong = read_things(line, unit)
    return " / ".join(wrong) or things_words(found)


# As coaches type them; invented.
@pytest.mark.parametrize(
    ("line", "unit", "meant"),
    [
        (("steps 15 cm, 20 cm; chairs, mats, bands, a wall, cable column 2.5-50 by 2.5, "
         "leg press 1-20"), "kg",
         ("machines: 1 × leg press, 1 to 20 by 1. "
         "cable columns: 1 × cable column, 2.5 to 50 kg by 2.5. "
         "everything else: 15 cm step (how many?); 20 cm step (how many?); chair (how many?); "
         "mat (how many?); band (how many?); 1 × wall")),
        ("leg press, rower x2 and 3 bikes", "kg",
         "machines: 1 × leg press; 2 × rower; 3 × bikes"),
        ("cable column x2 10-100 by 10", "lb",
         "cable columns: 2 × cable column, 10 to 100 lb by 10"),
        ("4 chairs; 2 treatment benches, boxes 8 in x2, 12 in", "lb",
         "everything else: 4 × chair; 2 × treatment bench; 2 × 8 in box; 12 in box (how many?)"),
        ("none", "kg", ""),
    ],
)  # fmt: skip
def test_things(line: str, unit: str, meant: str) -> None:
    assert spelled(line, unit) == meant


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ("cable column x2", "'cable column x2' says no pins; write it like 'cable column 5-50 by"),
        ("cable column 5-50", "says no step; write it like 'cable column 5-50 by 5'"),
        ("cable column 5-52 by 5", "does not end there; write 'cable column 5-50 by 5'"),
        ("leg press 20-1", "write the lowest first"),
        ("steps", "'steps' says no height; write it like 'step 20 cm'"),
        ("step 900 cm", "a height from 5 to 150 cm"),
        ("20 cm", "can't read '20 cm'; write things like 'leg press 1-20, cable column"),
        ("3", "can't read '3'"),
        ("0 x bike", "from 1 to 100 of a thing, not 0"),
        ("chairs, chair", "'chair' stands there twice"),
        ("sled", "'sled': leave it out here; in room.yml it goes under 'carriers', with its mass"),
        ("medicine balls 4-12", "it goes under 'hand-weights'"),
        ("2 sandbags", "it goes under 'hand-weights'"),
        ("trap bar", "'trap bar': write it among the bars"),
        ("kettlebells 12", "write it among the hand weights"),
        ("mats 2-4", "can't tell what '2-4' is in 'mats 2-4'; write its count or height"),
    ],
)
def test_what_to_write_instead(line: str, says: str) -> None:
    assert says in spelled(line)
