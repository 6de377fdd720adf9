"""Which exercise leads where: all exercises by the five doors."""

from typing import Any

from strength_handbook.model.exercise import Door
from strength_handbook.pages.coach_frame import coach_page, coach_uri
from strength_handbook.pages.dose_text import partial_notation
from strength_handbook.pages.numbers import percent
from strength_handbook.pages.page import Page, url_of
from strength_handbook.pages.session_page import exercise_link
from strength_handbook.plan.doors import DOORS
from strength_handbook.plan.worked import Worked

URI = coach_uri("substitutes")


def substitutes_page(worked: Worked) -> Page:
    """The matrix of exercises and doors."""
    by_name = sorted(worked.book.exercises.items(), key=lambda item: item[1].name)
    url = url_of(URI)
    return coach_page(
        URI,
        "What instead",
        "coach_substitutes.html",
        {
            "doors": [name for _, name in DOORS],
            "rows": [
                {
                    "name": exercise.name,
                    "link": exercise_link(url, key),
                    "used": key in worked.uses,
                    "cells": [
                        _cell(worked, key, _FIELDS[name], door, url)
                        for name, door in exercise.doors
                        if name in _FIELDS
                    ],
                }
                for key, exercise in by_name
            ],
        },
        says="All exercises by the five doors, with how much of the load carries over",
    )


_FIELDS = {key.replace("-", "_"): title for key, title in DOORS}


def _cell(worked: Worked, own: str, title: str, door: Door, url: str) -> dict[str, Any]:
    other = door.to if door.to != own else None
    return {
        "door": title,
        "target": worked.book.exercises[other].name if other else "",
        "link": exercise_link(url, other) if other else "",
        "how": door.how,
        "dose": partial_notation(door.dose) if door.dose else "",
        "share": "" if door.load is None else f"{percent(door.load)} of the load",
    }
