"""Texts that travel with the package, with their measures in the units of one room."""

import re

_BOTH = re.compile(r"\[\[([^\[\]|]*)\|([^\[\]|]*)\]\]")


def in_units(text: str, units: str) -> str:
    """A text that says each measure in one of its two ways.

    Args:
        text: with measures such as `[[75 kg|165 lb]]`, kilograms first.
        units: `kg` or `lb`, which brings inches too.

    >>> in_units("at: [[75 kg|165 lb]], hands: [[48 cm|19 in]]", "lb")
    'at: 165 lb, hands: 19 in'
    """
    return _BOTH.sub(r"\2" if units == "lb" else r"\1", text)
