"""What can be listed for a line of a job card: machines, wheels, families, materials, quantities, calculations."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING

from geometry.quantities import QUANTITIES
from library.cards.editing import edited
from library.cards.results import USUAL
from library.cards.setup_order import calculations_of
from library.equipment.model import Machine, Wheel, machines, wheels
from library.guidance.troubles import troubles_of
from tui import screens
from tui.screens.chooser import Choice
from tui.screens.own_table_forms import new_form
from tui.view.card_row import QUANTITY_SECTIONS
from tui.view.card_settings_rows import REST, aside_steps
from tui.view.card_steps import STEPS, step_of

if TYPE_CHECKING:
    from library.cards.job import Job
    from tui.screens.cards.card import CardScreen

_TITLES = {
    "received": "What else was measured on the tool as it came?",
    "wanted": "What else shall the tool have?",
    "after": "What else is measured after grinding?",
}


def has_calculation(screen: CardScreen) -> bool:
    """Whether the line in hand is of a calculation that the job goes through."""
    row = screen.form.row
    return row.section == "settings" and row.way != REST


def has_list(screen: CardScreen) -> bool:
    """Whether there is a list or a form for the line in hand."""
    row = screen.form.row
    ways = {"machine", "wheel", "result", REST, *_LISTS}
    return row.section in {"wrong", *QUANTITY_SECTIONS} or row.way in ways or bool(_held(screen))


def calculation_of(screen: CardScreen) -> None:
    """Show or fold the lines of the calculation in hand."""
    if has_calculation(screen):
        screen.form.open_calculation(screen.form.row.key)
    else:
        step = STEPS[step_of("settings")].title
        screen.say(f"No calculation stands in this line; those of the job are in the step {step}.")


def _of_a_calculation(screen: CardScreen) -> str:
    """What can be done with the calculation of the line in hand; a line under its heading keeps the arrows for itself."""
    row = screen.form.row
    where = "" if row.heading else "on its heading, above, "
    leaves = "takes it into the job again" if row.heading and row.text else "leaves it out of the job"
    return f"{screen.key_of('calculate')} shows all lines of this calculation, or only those that matter; {where}Right {leaves}."


def more_for(screen: CardScreen) -> None:
    """Open the list for the line in hand."""
    row, job = screen.form.row, screen.form.job
    section = row.section
    if row.way == REST:
        _pick(screen, "Calculations that rest", _aside(screen), lambda name: _wake(screen, name))
    elif section == "settings" and not _held(screen):
        screen.say(_of_a_calculation(screen))
    elif section == "wrong":
        troubles = list(_troubles(job))
        _pick(
            screen,
            "What is wrong with it, or what else was measured?",
            [*troubles, *_quantities(screen, "received")],
            lambda name: _take_wrong(screen, name, {one.id for one in troubles}),
        )
    elif section in QUANTITY_SECTIONS:
        _pick_in_step(screen, section)
    elif row.way in {"machine", "wheel"} and len(row.choices) < 2:
        way = row.way
        screen.app.push_screen(new_form(screen.session, way, lambda name: screen.wait_for(way, name)))
    elif row.way == "result":
        results = [
            Choice(text, text, USUAL.get(text, "As other cards of this shop have it."))
            for text in row.choices
            if text
        ]
        _pick(screen, "How did the job end?", results, screen.put, row.text)
    elif row.way in _LISTS:
        _pick(screen, row.label, list(_LISTS[row.way](job)), screen.put, row.text)
    elif held := _held(screen):
        _pick(
            screen,
            row.label.strip(),
            held,
            lambda name: _put(screen, name),
            _HELD + (row.text or row.default),
        )
    else:
        screen.say("There is nothing to list for this line; type what belongs there.")


_HELD = "="
"""Stands before what a line can hold where a list has names of quantities too, of which none begins so."""


def _held(screen: CardScreen) -> list[Choice]:
    """What the line in hand can hold where it is one of several, or what the machine and the book offer for it."""
    row = screen.form.row
    words = () if row.heading else row.choices or row.offers
    now = row.text or row.default
    return [
        Choice(
            _HELD + one,
            row.words(one),
            "This stands there now." if one == now else "One of those that this line can hold.",
        )
        for one in words
        if one
    ]


def _put(screen: CardScreen, name: str) -> None:
    screen.put(name.removeprefix(_HELD))


def _pick_in_step(screen: CardScreen, section: str) -> None:
    """List what the line in hand can hold, and behind it the quantities that have no line in the step yet."""
    row, held = screen.form.row, _held(screen)

    def take(name: str) -> None:
        if name.startswith(_HELD):
            _put(screen, name)
        else:
            screen.form.open(section, name)

    title = f"{row.label.strip()}: one of these; then more lines" if held else _TITLES[section]
    _pick(screen, title, [*held, *_quantities(screen, section)], take, _HELD + (row.text or row.default))


def _pick(
    screen: CardScreen, title: str, choices: list[Choice], then: Callable[[str], None], chosen: str = ""
) -> None:
    screen.app.push_screen(screens.PickScreen(screen.session, title, choices, then, chosen))


def _aside(screen: CardScreen) -> list[Choice]:
    form = screen.form
    return [
        Choice(one.sheet.name, one.sheet.title, one.sheet.question)
        for one in aside_steps(form.job, form.opened)
    ]


def _wake(screen: CardScreen, name: str) -> None:
    """Show a calculation that was at rest or left out, all of its lines."""
    form = screen.form
    if any(one.sheet.name == name and one.skipped for one in form.job.steps):
        form.take(form.book, edited(form.card, f"settings.{name}", ""))
    form.open_calculation(name)


def _quantities(screen: CardScreen, section: str) -> list[Choice]:
    """Every quantity that has no line yet, those that this family's calculations ask for first."""
    job = screen.form.job
    there = {row.key for row in screen.form.rows if row.section == section}
    asked = [field.key for sheet in calculations_of(job.family) for field in sheet.inputs]
    keys = dict.fromkeys([*asked, *QUANTITIES])
    return [
        Choice(key, QUANTITIES[key].title, QUANTITIES[key].definition) for key in keys if key not in there
    ]


def _troubles(job: Job) -> Iterable[Choice]:
    """The troubles that the book knows of these tools, each with what is looked at first."""
    entry = job.book.entries.get(job.card.entry)
    for title, rows in troubles_of(job.book, job.card.family, entry).items():
        first = rows[0].measure
        yield Choice(title, title, f"Look at: {first.said()}" if first is not None else "")


def _take_wrong(screen: CardScreen, name: str, troubles: set[str]) -> None:
    """Write a trouble behind what stands in the line already, or give a quantity a line."""
    if name not in troubles:
        screen.form.open("received", name)
        return
    before = screen.form.row.text.strip().rstrip(".;")
    screen.put(f"{before}; {name[:1].lower()}{name[1:]}" if before else name)


def _families(job: Job) -> Iterable[Choice]:
    return (Choice(name, one.title, one.what) for name, one in job.book.families.items())


def _materials(job: Job) -> Iterable[Choice]:
    return (Choice(name, one.title, ", ".join(one.synonyms)) for name, one in job.book.materials.items())


def _machines(job: Job) -> Iterable[Choice]:
    return (Choice(name, one.title, told_of_machine(one)) for name, one in machines(job.book).items())


def _wheels(job: Job) -> Iterable[Choice]:
    return (Choice(name, one.title, told_of_wheel(one)) for name, one in wheels(job.book).items())


_LISTS: dict[str, Callable[[Job], Iterable[Choice]]] = {
    "family": _families,
    "tool.work_material": _materials,
    "machine": _machines,
    "wheel": _wheels,
}


def told_of_machine(machine: Machine) -> str:
    """What the book knows of a machine, in a line."""
    speeds = ", ".join(one.text for one in machine.spindle_speeds)
    graduations = ", ".join(graduation.title for graduation in machine.graduations.values())
    parts = (
        f"runs at {speeds}" if speeds else "",
        f"graduations: {graduations}" if graduations else "",
        machine.note,
    )
    return ". ".join(part for part in parts if part)


def told_of_wheel(wheel: Wheel) -> str:
    """What the book knows of a wheel, in a line."""
    rated = f"rated {wheel.rated_speed.measure.text}" if wheel.rated_speed else "NO RATING"
    size = wheel.diameter.text if wheel.diameter else "no diameter"
    new = f"{wheel.new_diameter.text} when new" if wheel.new_diameter else ""
    dressed = f"dressed {wheel.dressed.isoformat()}" if wheel.dressed else ""
    parts = (rated, wheel.shape, size, new, wheel.grit, wheel.grade, wheel.bond, dressed, wheel.note)
    return ", ".join(part for part in parts if part)
