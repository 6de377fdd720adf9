"""What of the room a dose may name: bands, chains, and the pins of a stack; for messages."""

from collections.abc import Mapping
from dataclasses import dataclass
from itertools import pairwise

MOST_NAMED = 12
"""Bands that a message names."""


@dataclass(frozen=True, slots=True)
class NamedKit:
    """Names in one room.

    Attributes:
        bands: of all bands; None where nothing is known of the room.
        chains: pairs of chains; None where nothing is known of the room.
        pins: marks of the stack that is used, the lightest first.
    """

    bands: tuple[str, ...] | None = None
    chains: int | None = None
    pins: tuple[str, ...] = ()

    def said(self, number: str = "") -> Mapping[str, str]:
        """What stands in the braces of messages.

        Args:
            number: of a pin, where one is written.

        >>> NamedKit(("22-a", "22-b"), 2, ("5 kg", "10 kg")).said("2")["pins"]
        "counted from the top pin 2 is marked '10 kg': write '@ 10 kg'"
        """
        return {"bands": self._bands(), "chains": self._chains(), "pins": self._pins(number)}

    def _bands(self) -> str:
        if self.bands is None:
            return (
                "a band is written by its name in this room, such as 'bands 22-a 22-b' for two on "
                "a bar, or 'help band 22-a'"
            )
        if not self.bands:
            return "room.yml names no bands: write those that there are under 'bands', with a name"
        named = ", ".join(self.bands[:MOST_NAMED])
        more = " …" if len(self.bands) > MOST_NAMED else ""
        one = self.bands[0]
        pair = next(
            (f"{a} {b}" for a, b in pairwise(self.bands) if a.split("-")[0] == b.split("-")[0]),
            " ".join(self.bands[:2]),
        )
        two = f"'bands {pair}' for two on a bar, or " if len(self.bands) > 1 else ""
        return (
            f"a band is written by its name; here are {named}{more}: write {two}'help band {one}' "
            "for one that takes weight off"
        )

    def _chains(self) -> str:
        if self.chains == 0:
            return "room.yml names no chains: write those that there are under 'chains'"
        pairs = "" if self.chains is None else f" (there are {self.chains})"
        return (
            f"say how many pairs{pairs}, one chain of each on each side: 'chains 1 pair'; or a "
            "share, 'chains 20 % at top'"
        )

    def _pins(self, number: str) -> str:
        place = int(number) if number.isdigit() else 0
        if 0 < place <= len(self.pins):
            mark = self.pins[place - 1]
            return f"counted from the top pin {place} is marked '{mark}': write '@ {mark}'"
        if self.pins:
            return f"write its mark, '@ {self.pins[0]}' to '@ {self.pins[-1]}'"
        return "write its mark"


UNKNOWN = NamedKit()
"""Where nothing is known of the room."""
