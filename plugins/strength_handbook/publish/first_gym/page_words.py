"""What a new gym's pages say differently by its room: nothing of a rack where there is none."""

from strength_handbook.publish.first_gym.answers import Answers

_RACK = """\
## Before every lift with a bar

- Safeties at the same number on both sides, tested once with the empty bar.
- The same plates on both sides, collars on.
- Load and unload one plate at a time, changing sides. A bar with plates on one side only can tip.
- Two steps clear all round, and nobody in front of the bar."""
_BAR = """\
## Before every lift with a bar

- The bar starts and ends on the floor, or on what the coach has set up for it.
- The same plates on both sides, collars on.
- Two steps clear all round, and nobody in front of the bar."""
_NO_BAR = """\
## Before every exercise

- Two steps clear all round, and a floor that is dry and level.
- A chair stands with its back against a wall, and does not rock or roll.
- What you lift is whole and dry, and so are your hands.
- Unsteady today? Stay within reach of a wall or a rail, with somebody near."""
"""Common practice, no source."""


def page_words(answers: Answers) -> dict[str, str]:
    """Parts of the pages, by their names in the texts."""
    bar = answers.bars != ()
    return {
        "always": "Collars on, always. Shoes on, always." if bar else "Shoes on, always.",
        "before_every_lift": (_RACK if answers.has_racks else _BAR) if bar else _NO_BAR,
    }
