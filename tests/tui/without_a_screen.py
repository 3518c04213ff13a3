"""Calculators of a small shop, and what stands in them, for tests that need no screen."""

from __future__ import annotations

from geometry.calculations import calculation
from library.book.model import Book, Entry, Measure
from library.equipment.model import Machine
from library.search.along import Along
from library.search.sizes import Size
from tui.session import Session
from tui.view import calculator_fields
from tui.view.form import Form


def session(*cams: float) -> Session:
    throws = tuple(Measure(f"{one:g} mm", one) for one in cams)
    return Session(book=Book({}, more={"machine": {"grey": Machine("grey", "Grey", cam_throws=throws)}}))


def along(text: str, tolerance: str = "") -> Along:
    return Along(Size(text, tolerance=tolerance))


def opened(shop: Session, entry: Entry, name: str) -> Form:
    form = shop.calculators.form(entry, calculation(name))
    shop.calculators.compute(form)
    return form


def word(form: Form, key: str) -> str:
    return calculator_fields.mark(form, next(one for one in form.fields if one.key == key))
