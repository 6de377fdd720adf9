"""Bands, chains, pivots and tip limits for the page about the room."""

from dataclasses import dataclass
from math import floor
from typing import Any

from strength_handbook.calc.tipping import SAFETY_FACTOR
from strength_handbook.model.length import amount_in, length_text, own_unit
from strength_handbook.model.printed import bare_mass, mass, plate_mass
from strength_handbook.model.quantities import GRAMS_PER_POUND, stamped
from strength_handbook.model.resistance import Band, Chain
from strength_handbook.model.room import Room
from strength_handbook.pages.render import render, safe
from strength_handbook.pages.variable_html import error_of, pairs_words
from strength_handbook.plan.tipover import TipLimit, tip_limits

HEADINGS = (
    ("tipping", "Bars in the rack"), ("bands", "Bands"), ("chains", "Chains"), ("pivots", "Pivots"),
)  # fmt: skip
"""Anchor and title of each heading: always there, since hand-written pages lead to them; a room
without racks calls the first one otherwise."""


@dataclass(frozen=True, slots=True)
class RoomPart:
    """A part of the page with headings of its own.

    Attributes:
        html: ready for the page.
        headings: anchor and title of each of its headings.
    """

    html: str
    headings: tuple[tuple[str, str], ...]


def room_resistance(room: Room) -> RoomPart:
    """What changes its load on the way, and what can tip."""
    units = room.units
    limits = [_limit(room, limit) for limit in tip_limits(room)]
    headings = HEADINGS if room.racks else (("tipping", "Tipping"), *HEADINGS[1:])
    html = render(
        "room_resistance.html",
        {
            "headings": headings,
            "units": units,
            "bars": bool(room.bars),
            "racks": bool(room.racks),
            "limits": limits,
            "factor": f"{SAFETY_FACTOR:g}",
            "tip_error": error_of("tip_margin"),
            "unmeasured": _unmeasured(room),
            "bands": [_band(key, band, units) for key, band in room.bands.items()],
            "band_error": error_of("band_pull"),
            "chains": [_chain(chain, units) for chain in room.chains.values()],
            "chain_error": error_of("chain_load"),
            "pivots": list(room.pivots.values()),
            "pivot_error": error_of("landmine_vertical"),
        },
    )
    return RoomPart(html, headings)


def _limit(room: Room, limit: TipLimit) -> dict[str, Any]:
    units = room.units
    whole = GRAMS_PER_POUND if units == "lb" else 1000
    lone_g = floor(limit.lone_kg * 1000 / whole + 1e-9) * whole
    heavier = sorted({plate.mass.grams for plate in room.plates if plate.mass.grams > lone_g})
    return {
        "bar": room.bars[limit.bar].name,
        "rack": room.racks[limit.rack].name,
        "lone": mass(lone_g, units),
        "too_heavy": " or ".join(plate_mass(grams, units) for grams in heavier),
        "full": " · ".join(stamped(grams, units) for grams in limit.side_g),
        "order": safe(pairs_words(limit.pairs, units)),
        "alone": not any(pair.hold for pair in limit.pairs),
        "margin": f"{limit.lowest_margin:.1f}",
        "tips": limit.lowest_margin < 1,
    }


def _unmeasured(room: Room) -> str:
    """Bars of which nobody knows whether they lie in a rack."""
    return ", ".join(bar.name for bar in room.bars.values() if bar.between_collars is None)


def _band(number: str, band: Band, units: str) -> dict[str, str]:
    pulls = ", ".join(
        f"{bare_mass(pull.grams, units)} at {_at(height)}"
        for height, pull in (band.pulls or {}).items()
    )
    return {
        "number": number,
        "width": length_text(band.width, "mm") if band.width is not None else "–",
        "pulls": pulls or "not read",
        "help": "–" if band.help is None else bare_mass(band.help.grams, units),
        "until": band.until.isoformat() if band.until else "–",
        "note": band.note or "",
    }


def _at(height: float) -> str:
    """In centimetres as the head of the table says, or with its own unit."""
    return length_text(height) if own_unit(height) else amount_in(height, "cm")


def _chain(chain: Chain, units: str) -> dict[str, Any]:
    metre = chain.mass_per_metre
    return {
        "pairs": chain.pairs,
        "name": chain.name,
        "length": length_text(chain.length),
        "leader": length_text(chain.leader, "cm") if chain.leader else "",
        "strand": mass(metre.grams, units),
        "pair": mass(2 * metre.grams, units),
        "until": chain.until.isoformat() if chain.until else "",
        "note": chain.note or "",
    }
