"""The drawing of an exercise as a file of its own, for where it is shown only when asked for.

It is the same drawing as on the exercise's page. A picture takes no colours from the page it is on,
so the file has them in it, for light; dark is made of it by the page's style.
"""

import json
from functools import cache
from html import escape
from pathlib import Path

from strength_handbook.figures.sheet import figure_svg, figure_words
from strength_handbook.model.exercise import Exercise
from strength_handbook.plan.worked import Worked

STYLE = Path(__file__).parent.parent / "theme/assets/strength-handbook/figures.css"
WORDS = "data/figures.js"
"""Address of the file that says what each drawing shows. A plain script, as the lists are."""


def figure_address(key: str) -> str:
    """Address of the drawing of an exercise."""
    return f"exercises/{key}/figure.svg"


def figure_file(exercise: Exercise) -> str:
    """The drawing as an SVG file; empty where the exercise has none."""
    if exercise.figure is None:
        return ""
    head, rest = "<svg ", figure_svg(exercise.figure, exercise.name).removeprefix("<svg ")
    end = rest.index(">") + 1
    style = f"<style>{escape(_style(), quote=False)}</style>"
    return f'{head}xmlns="http://www.w3.org/2000/svg" {rest[:end]}{style}{rest[end:]}\n'


def figures_script(worked: Worked) -> str:
    """What each drawing shows, by exercise, put beside the handbook's scripts."""
    words = {
        key: figure_words(exercise.figure, exercise.name)
        for key, exercise in sorted(worked.book.exercises.items())
        if exercise.figure is not None
    }
    text = json.dumps(words, ensure_ascii=False, separators=(",", ":"))
    return f"(globalThis.strengthHandbook=globalThis.strengthHandbook||{{}}).figures={text};\n"


@cache
def _style() -> str:
    """The rules of a drawing on a light page: those for the page's own dark come last."""
    rules = STYLE.read_text(encoding="utf-8").partition("*/")[2].partition("@media")[0]
    return " ".join(f".sh-pose {{ font-family: sans-serif }} {rules}".split())
