"""A dose on a page: its notation, each piece an element of its own."""

from markupsafe import Markup

from strength_handbook.dose.printing import pieces
from strength_handbook.model.dose import Dose
from strength_handbook.pages.render import safe


def dose_html(dose: Dose) -> Markup:
    """The notation of a dose in pieces, which session mode sets beside each other as facts.

    What is read is `dose.printing.notation`, sign for sign.
    """
    return safe(" · ".join(str(_piece(one.field, one.text)) for one in pieces(dose)))


def _piece(field: str, text: str) -> Markup:
    # No line ends inside a tempo.
    if field == "tempo":
        return Markup('<span class="sh-tempo">{}</span>').format(text)
    return Markup("<span>{}</span>").format(text)
