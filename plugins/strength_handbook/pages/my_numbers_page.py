"""The page on which members enter their own numbers; they stay in the browser."""

from collections.abc import Iterator
from typing import Any

from strength_handbook.model.program import Base
from strength_handbook.model.quantities import in_unit
from strength_handbook.pages.page import Heading, Page, link
from strength_handbook.pages.render import render
from strength_handbook.pages.tools_html import block
from strength_handbook.plan.loads import body_share_g
from strength_handbook.plan.worked import Worked

URI = "my-numbers.md"
URL = "my-numbers/"
BODY_G = (20_000, 300_000)
BEST_G = (1_000, 500_000)
"""What may be entered: the limits of the program files."""
MOST_TENTHS = 5_000_000
"""Tenths of seconds, or of watts; `paces.js` keeps no more."""


def my_numbers_page(worked: Worked) -> Page:
    """The form, and what can be done with what was entered."""
    html = render(
        "my_numbers.html",
        {
            "fields": list(_fields(worked)),
            "bests": list(_bests(worked)),
            "units": worked.book.room.units,
            "tested": block(
                "sh-tested",
                list(dict.fromkeys(key for p in worked.programs for key in p.program.bases)),
            ),
            "home": link(URL, ""),
            "my_log": link(URL, "my-log/"),
        },
    )
    return Page(
        URI,
        "My numbers",
        html,
        (
            Heading(2, "tested", "Tested with several repetitions?"),
            Heading(2, "kept", "What is kept here"),
        ),
        description="Enter your body weight and your best lifts once; they stay on this phone",
        in_nav=True,
    )


def _fields(worked: Worked) -> Iterator[dict[str, Any]]:
    yield _field("body", "Body weight", "As you step on the scales.", BODY_G, None, worked)
    seen: set[str] = set()
    for program in worked.programs:
        for key, base in program.program.bases.items():
            if key not in seen:
                seen.add(key)
                tables = (base.from_.grams, base.to.grams)
                hint = _hint(worked, base)
                yield _field(f"base-{key}", base.name, hint, BEST_G, tables, worked)


def _bests(worked: Worked) -> Iterator[dict[str, Any]]:
    """Fields of tested bests: a time in minutes and seconds, or watts; kept in tenths."""
    bests = {key: one for p in worked.programs for key, one in p.program.bests.items()}
    for key, best in bests.items():
        watts = best.from_.watts
        yield {
            "name": f"best-{key}",
            "label": best.name,
            "write": "watts" if watts else "minutes and seconds",
            "kind": "watts" if watts else "time",
            "low": 1,
            "high": MOST_TENTHS,
            "says": "that somebody can reach",
            "tables": tuple(round(10 * one.amount) for one in (best.from_, best.to)),
            "hint": f"The tables go from {best.from_.label} to {best.to.label}.",
        }


def _field(
    name: str,
    label: str,
    hint: str,
    limits: tuple[int, int],
    tables: tuple[int, int] | None,
    worked: Worked,
) -> dict[str, Any]:
    low, high = limits
    units = worked.book.room.units
    return {
        "name": name,
        "label": label,
        "hint": hint,
        "low": low,
        "high": high,
        "tables": tables,
        "says": f"between {in_unit(low, units)} and {in_unit(high, units)} {units}",
    }


def _hint(worked: Worked, base: Base) -> str:
    """What exactly to enter."""
    units = worked.book.room.units
    reach = f"The tables go from {in_unit(base.from_.grams, units)} to "
    reach += f"{in_unit(base.to.grams, units)}."
    if base.kind != "system":
        return reach
    share = body_share_g(worked.book.exercises[base.exercise].load, 100.0)
    body = "your body weight" if share == 100 else f"{share:g} % of your body weight"
    return f"Everything together: {body} plus what you added, or less the help. {reach}"
