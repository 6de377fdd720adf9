"""A figure that no body can take is an error at its line."""

from collections.abc import Iterator

from strength_handbook.figures.checks import impossible
from strength_handbook.figures.kit_checks import out_of_place
from strength_handbook.figures.sheet import moments
from strength_handbook.model.exercise import Exercise
from strength_handbook.reading.problem import Problem
from strength_handbook.reading.source import Path, Source

_MOMENTS = ("start", "turn", "end")


def check_figure(exercise: Exercise, source: Source) -> Iterator[Problem]:
    """Everything that is wrong with an exercise's figure, if it has one."""
    figure = exercise.figure
    if figure is None:
        return
    poses = moments(figure)
    found = [
        (number, wrong) for number, one in enumerate(poses) for wrong in impossible(figure, one)
    ]
    for number, wrong in found or out_of_place(figure, poses):
        path: Path = ("figure", _MOMENTS[number], *((wrong.key,) if wrong.key else ()))
        yield source.problem(path, wrong.slug, wrong.text)
