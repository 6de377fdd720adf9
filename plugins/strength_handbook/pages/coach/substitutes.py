"""Which exercise leads where: all exercises by the five doors."""

from typing import Any

from strength_handbook.dose.printing import partial_notation
from strength_handbook.model.doors import HURTS, Door
from strength_handbook.model.printed import percent
from strength_handbook.pages.coach.frame import coach_page, coach_uri
from strength_handbook.pages.page import Page, url_of
from strength_handbook.pages.session_page import exercise_link
from strength_handbook.plan.doors import DOORS, NAMES
from strength_handbook.plan.worked import Worked

URI = coach_uri("substitutes")


def substitutes_page(worked: Worked) -> Page:
    """The matrix of exercises and doors."""
    by_name = sorted(worked.book.exercises.items(), key=lambda item: item[1].name)
    url = url_of(URI)
    return coach_page(
        URI,
        "Substitutes",
        "coach_substitutes.html",
        {
            "doors": [name for _, name in DOORS],
            "rows": [
                {
                    "name": exercise.name,
                    "link": exercise_link(url, key),
                    "used": key in worked.uses,
                    "cells": [
                        {"door": title, "ways": _ways(worked, key, door, url)}
                        for door, title in DOORS
                    ],
                }
                for key, exercise in by_name
            ],
        },
        says="All exercises by the five doors, with how much of the load carries over",
    )


def _ways(worked: Worked, own: str, door: str, url: str) -> list[dict[str, Any]]:
    """What stands in one cell: the door, or those for parts of the body, after when to stop."""
    doors = worked.book.exercises[own].doors
    found = [
        _way(worked, own, key, one, url)
        for key, one in doors.each()
        if key == door or key.startswith(f"{door}-")
    ]
    if door == HURTS and doors.hurts.stop is not None:
        stop = {"part": "stop for today", "how": doors.hurts.stop}
        found.insert(0, dict.fromkeys(("target", "link", "dose", "share"), "") | stop)
    return found


def _way(worked: Worked, own: str, key: str, door: Door, url: str) -> dict[str, Any]:
    other = door.to if door.to != own else None
    return {
        "part": NAMES[key].partition(": ")[2],
        "target": worked.book.exercises[other].name if other else "",
        "link": exercise_link(url, other) if other else "",
        "how": door.how,
        "dose": partial_notation(door.dose) if door.dose else "",
        "share": "" if door.load is None else f"{percent(door.load)} of the load",
    }
