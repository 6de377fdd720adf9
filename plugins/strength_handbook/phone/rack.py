"""What a phone needs to plan a shared bar: the plates of one side, and seconds for each change."""

from typing import Any

from strength_handbook.model.book import Book
from strength_handbook.model.loading import Loading, OnBar
from strength_handbook.plan.scales import bar_table


def rack_data(book: Book, loading: Loading) -> dict[str, Any]:
    """What one side of a shared bar may carry; nothing for what is not shared.

    Each mass with the widths of its plates, thin first, and the sleeve; in micrometres.
    """
    if not isinstance(loading, OnBar) or loading.hands is not None:
        return {}
    table = bar_table(book.room, loading)
    widths: dict[int, list[int]] = {}
    for size in table.sizes:
        widths.setdefault(size.grams, []).extend([size.width_um] * size.available(table.sides))
    plates = [[grams, *sorted(each)] for grams, each in sorted(widths.items()) if each]
    if table.sleeve_mm is None:
        return {"plates": plates}
    return {"plates": plates, "sleeve": round(table.sleeve_mm * 1000)}


def swap_data(book: Book) -> dict[str, float]:
    """Seconds from one lifter to the next: people, each plate, each time bands or chains move."""
    rules = {"people": "swap-time", "plate": "plate-time", "top": "band-time"}
    return {key: book.rule(rule) for key, rule in rules.items()}
