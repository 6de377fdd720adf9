"""What the first program of a room without a bar in a rack does with the weights that are there."""

from dataclasses import dataclass

from strength_handbook.publish.first_gym.answers import Answers


@dataclass(frozen=True, slots=True)
class First:
    """The exercise that opens the second session, with its words.

    Attributes:
        key: its short name on the shelf.
        says: what the session is for.
        purpose: what the exercise is for.
        weeks: its dose in both weeks.
        needs: all that the program needs.
    """

    key: str
    says: str
    purpose: str
    weeks: tuple[str, str]
    needs: str

    def values(self) -> dict[str, str]:
        """What stands for each sign of the texts."""
        return {
            "first": self.key,
            "first_says": self.says,
            "first_purpose": self.purpose,
            "first_week_1": self.weeks[0],
            "first_week_2": self.weeks[1],
            "first_needs": self.needs,
        }


_NOTHING = First(
    "squat-without-weight",
    "Bend your knees, and wake up your back.",
    "Both heels down, every time",
    ("2x6, tempo 2-0-1-0, RIR 4", "2x8, tempo 2-0-1-0, RIR 3"),
    "a chair, a wall, a mat and the floor",
)
_DUMBBELLS = First(
    "goblet-squat",
    "Squat with a weight in your arms, and wake up your back.",
    "Elbows just inside the knees",
    ("2x6, tempo 2-0-1-0, RIR 4", "2x8, tempo 2-0-1-0, RIR 3"),
    "a chair, a wall, a mat, the floor and a dumbbell",
)
_KETTLEBELLS = First(
    "suitcase-deadlift",
    "Lift a weight beside you, and wake up your back.",
    "Shoulders level from the floor to the top",
    ("2x6 ES, tempo 2-0-1-0, RIR 4", "2x8 ES, tempo 2-0-1-0, RIR 3"),
    "a chair, a wall, a mat, the floor and a kettlebell",
)


def first_exercise(answers: Answers) -> First:
    """The exercise for the weights of a room; dumbbells stand there until somebody has said."""
    kinds = {"dumbbell"} if answers.hands is None else {one.kind for one in answers.hands}
    if "dumbbell" in kinds:
        return _DUMBBELLS
    return _KETTLEBELLS if "kettlebell" in kinds else _NOTHING
