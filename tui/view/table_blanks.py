"""The lines of the forms for tables that are no entries: machines, wheels, set-ups, rules for wheels, troubles, threads."""

from __future__ import annotations

from collections.abc import Collection, Mapping

from geometry.quantities import quantity
from geometry.surfaces import SURFACES
from library.book.model import Book
from library.book.tool_materials import TOOL_MATERIALS
from library.editing.divisions import DIVISION, example_of
from library.editing.typed_tables import SOURCE
from library.equipment.abrasives import ABRASIVES
from library.equipment.usual_graduations import GRADUATIONS
from library.guidance.following import Follows, lines_with_others
from library.guidance.model import OPERATIONS, STEPS, WAYS, WHEEL_LINES, recommended_wheels, setups
from library.guidance.shapes import BESIDES
from library.threads.reading import all_series, all_threads
from tui.view.text_form import Blank

NOUNS: Mapping[str, str] = {
    "machine": "machine",
    "wheel": "wheel",
    "setup": "set-up",
    "recommended_wheel": "recommended wheel",
    "unsuited_wheel": "unsuited wheel",
    "symptom": "trouble",
    "thread": "thread",
}
"""What each kind of table is called."""

_NAME = Blank("id", "Id", "Its name on cards and in the files: small letters, digits and hyphens.")
_NOTE = Blank("note", "Note", "What the next person should know of it.")
_SYNONYMS = Blank("synonyms", "Other words", "By which it is found too, parted by commas.")
_TURNED = "Left and Right change it."

_MOVEMENTS: Mapping[str, str] = {"tilt": "Wheel head tilt", "work-head": "Work head swivel"}
"""What a movement is called, where that is more than the name of its table."""


def _of_movement(name: str, whole: Mapping[str, object]) -> str:
    """What belongs into the line of a movement, and which direction a card tells of it."""
    ways = (
        f" A card says {whole['more']} or {whole['less']}, the way that it moves, whichever way its lines count; "
        "its file can have other words for them."
        if "more" in whole
        else ""
    )
    return f"What one division is worth, with its unit: {example_of(name)}. Empty where it has none.{ways}"


_MACHINE = (
    Blank("title", "Title", "As the shop calls it, such as The grinder by the window."),
    _NAME,
    Blank("index_ratio", "Dividing head", "Turns of its crank for one turn of the work spindle, such as 40.", overtype=True),
    Blank("plate_holes", "Hole circles", "Of the plates that are in the shop, parted by commas: 15, 16, 18, 21.",
          overtype=True),
    Blank("spindle_speeds", "Speeds", "Of the wheel spindle; the unit after the last holds for all: 2800, 4200 rpm.",
          overtype=True),
    Blank("cam_throws", "Cams", "The throw of each cam in the drawer; the unit after the last holds for all: 0.4, 0.8, "
          "1.2 mm.", overtype=True),
    Blank("throw_per", "Throw counted", "For one turn of the tool, or from one tooth to the next. Left and Right change it.",
          ("", "tooth", "turn")),
    *(Blank(DIVISION + name, _MOVEMENTS.get(name, name.replace("-", " ").capitalize()), _of_movement(name, whole),
            overtype=True) for name, whole in GRADUATIONS.items()),
    _NOTE,
)  # fmt: skip

_WHEEL = (
    Blank("title", "Title", "As the shop calls it, such as White cup 100."),
    _NAME,
    Blank("shape", "Shape", f"Its type by ISO 525. {_TURNED}", ("", *quantity("wheel_shape").choices)),
    Blank("diameter", "Diameter", "As it is now, with its unit: 98 mm.", overtype=True),
    Blank("new_diameter", "When new", "Its diameter when new, with its unit: 100 mm. A worn wheel is turned no faster than "
          "it was when new.", overtype=True),
    Blank("abrasive", "Abrasive", f"What cuts in it. {_TURNED}", ("", *ABRASIVES)),
    Blank("grit", "Grit", "As marked on the wheel, such as 60."),
    Blank("grade", "Grade", "How hard it is bonded: the letter that is marked on the wheel, such as J."),
    Blank("bond", "Bond", "As marked on the wheel, or in words: V or vitrified, B or resin."),
    Blank("rated_speed", "Rated speed", "As marked on the wheel, with its unit: 35 m/s, 6500 ft/min or 3800 rpm. A wheel without a "
          "readable rating is not used.", overtype=True),
    Blank("dressed", "Dressed", "The day on which it was last dressed: year-month-day.", overtype=True),
    _NOTE,
)  # fmt: skip

_BRACES = "A quantity in braces, such as {chamfer_angle}, stands for the number that a job knows."

_STEP_HINTS: Mapping[str, str] = {
    "hold": "How the tool is held.",
    "true": "How true it must run, and how that is seen.",
    "wheel": "Which wheel, and on which of its faces.",
    "set": "What is set on the machine, in order.",
    "feed": "How much a pass to rough and to finish, and how it is sparked out.",
    "coolant": "Dry or wet.",
    "dress": "When the wheel is dressed, and how.",
    "read": "Where the indicator points, and what it should read.",
    "check": "What to look at before the tool leaves the machine.",
}

_WHEEL_HINTS: Mapping[str, str] = {
    "abrasive": "What cuts in it.",
    "grit": "How coarse, to rough and to finish.",
    "grade": "How hard it is bonded, such as H to K.",
    "bond": "Vitrified, resin, metal.",
    "shape": "Its type by ISO 525, and which of its faces grinds.",
    "speed": "How fast it may run.",
    "infeed": "How much a pass.",
    "coolant": "Dry or wet.",
    "dress": "How it is dressed, and when.",
}

_THREAD_LINES: Mapping[str, tuple[str, str]] = {
    "diameter": ("Diameter", "Over the crests, with its unit: 9.62 mm."),
    "pitch": ("Pitch", "With its unit: 1.25 mm. Or the line below, not both."),
    "threads_per_inch": ("Threads per inch", "Such as 20 tpi."),
    "starts": ("Starts", "How many threads run side by side."),
    "tap_drill": ("Tap drill", "The drill before tapping, with its unit."),
    "other_tap_drills": ("Other drills", "What else is drilled, parted by commas."),
    "pitch_diameter": ("Pitch diameter", "With its unit."),
    "minor_diameter": ("Minor diameter", "Of the hole, with its unit."),
    "screw_minor_diameter": ("Of the bolt", "The minor diameter of the bolt, with its unit."),
    "front_pitch_diameter": ("At the front", "The pitch diameter at the small end of a taper thread."),
    "flutes": ("Flutes", "How many such taps usually have."),
}


def blanks_for(array: str, book: Book | None, name: str = "") -> tuple[Blank, ...]:
    """The lines of a form.

    Args:
        array: the kind of table.
        book: has the words that the lines may hold.
        name: the id of the one that is changed, of which the id is no line; empty for a new one.
    """
    made = _MAKERS[array](book, name)
    return tuple(one for one in made if not name or one.key != "id")


def _setup(book: Book | None, name: str) -> tuple[Blank, ...]:
    families = tuple(book.families) if book is not None else ()
    followed = _followed(name, setups(book) if book is not None else {}, STEPS)
    return (
        Blank("title", "Title", "What is ground and how, such as Chamfer of a tap, eccentric by a cam."),
        _NAME,
        Blank("family", "Family", f"Whose tools are ground so; empty for one that others only follow. {_TURNED}",
              ("", *families)),
        Blank("surface", "Surface", f"What is ground. {_TURNED}", ("", *SURFACES, *BESIDES)),
        Blank("methods", "Methods", _words_in(quantity("relief_method").choices, "How its relief is made, empty for any way")),
        Blank("when", "Only for", "Words of the entries that it is for, parted by commas; empty for all of the family."),
        Blank("like", "Like", "The id of another set-up, whose steps it follows where it has none itself."),
        _SYNONYMS,
        *_told(STEPS, _STEP_HINTS, followed),
    )  # fmt: skip


def _recommended_wheel(book: Book | None, name: str) -> tuple[Blank, ...]:
    followed = _followed(name, recommended_wheels(book) if book is not None else {}, WHEEL_LINES)
    return (
        Blank("title", "Title", "What it is for, such as HSS, relief of teeth."),
        _NAME,
        Blank("tool_materials", "Tools of", _words_in(TOOL_MATERIALS, "What the tools are made of")),
        Blank("operations", "To grind", _words_in(OPERATIONS, "What is ground with it, empty for all")),
        Blank("abrasives", "Abrasives", _words_in(ABRASIVES, "What may cut in it")),
        Blank("shapes", "Shapes", _words_in(quantity("wheel_shape").choices, "Its types by ISO 525")),
        Blank("like", "Like", "The id of another one, whose lines it takes where it has none itself."),
        _SYNONYMS,
        *_told(WHEEL_LINES, _WHEEL_HINTS, followed),
    )


def _unsuited_wheel(book: Book | None, name: str) -> tuple[Blank, ...]:
    return (
        Blank("title", "Title", "What does not go together, such as Diamond on steel."),
        _NAME,
        Blank("state", "State", f"Whether it stops a card, or is to be looked at; empty for the latter. {_TURNED}",
              ("", "watch", "stop")),
        Blank("tool_materials", "Tools of", _words_in(TOOL_MATERIALS, "What the tools are made of, empty for all")),
        Blank("abrasives", "Abrasives", _words_in(ABRASIVES, "Of the wheel, empty for all")),
        Blank("shapes", "Shapes", _words_in(quantity("wheel_shape").choices, "Of the wheel, empty for all")),
        Blank("methods", "Methods", _words_in(quantity("relief_method").choices, "How the relief is made, empty for all")),
        *_told({"why": "Why", "take": "Take"}, {"why": "The reason.", "take": "What to take in its place."}, {}),
    )  # fmt: skip


def _symptom(book: Book | None, name: str) -> tuple[Blank, ...]:
    families = tuple(book.families) if book is not None else ()
    measure = {"measure": "What to measure on the tool then."}
    change = {"change": "What to do about it."}
    return (
        Blank("title", "Title", "The trouble as it is said, such as Chatters; several with one title tell of one trouble."),
        _NAME,
        Blank("families", "Families", _words_in(families, "Those that it is seen on, empty for every tool")),
        Blank("synonyms", "Said too", "How else it is said, parted by commas."),
        Blank("when", "Only for", "Words of the entries that it is seen on, parted by commas; empty for all of the families."),
        *_told({"measure": "Measure"}, measure, {}),
        Blank("value", "Value", "The quantity to change, by its name in the files, such as rake_angle; empty where it is none."),
        Blank("way", "Which way", f"How the value is changed. {_TURNED}", ("", *WAYS)),
        *_told({"change": "Change"}, change, {}),
    )  # fmt: skip


def _thread(book: Book | None, name: str) -> tuple[Blank, ...]:
    standard = all_threads().get(name)

    def hint(key: str, said: str) -> str:
        there = getattr(standard, key, "") if standard is not None else ""
        text = ", ".join(there) if isinstance(there, tuple) else str(there or "")
        return f"{said} Empty: as the standard has it, {text}." if text else said

    title = f"By which it is asked for{', such as M8 x 1.25 STI' if standard is None else ''}."
    return (
        Blank("title", "Title", hint("title", title)),
        _NAME,
        Blank("synonyms", "Other words", hint("synonyms", "How else it is written, parted by commas.")),
        *(Blank(key, label, hint(key, said), overtype=True) for key, (label, said) in _THREAD_LINES.items()),
        Blank("series", "Series", f"The standard series that it belongs to, if any. {_TURNED}", ("", *all_series())),
        *(Blank(key, label, f"Where no series says it. {_TURNED}", ("", *quantity(key).choices))
          for key, label in (("thread_form", "Form"), ("thread_taper", "Taper"))),
        Blank("hand", "Hand", f"Where it is always so. {_TURNED}", ("", *quantity("hand").choices)),
        Blank("source", "Source", _SOURCE),
        Blank("place", "Place in it", "Chapter, section, table or page, where a published source is named."),
        _NOTE,
    )  # fmt: skip


_SOURCE = "Where it is from: shop, common practice, from memory, or the id of a source of the book."
_SOURCE_AND_PLACE = f"{_SOURCE} After a comma the place in it."

_MAKERS = {
    "machine": lambda book, name: _MACHINE,
    "wheel": lambda book, name: _WHEEL,
    "setup": _setup,
    "recommended_wheel": _recommended_wheel,
    "unsuited_wheel": _unsuited_wheel,
    "symptom": _symptom,
    "thread": _thread,
}
"""What makes the lines for each kind of table."""


def _told(
    labels: Mapping[str, str], hints: Mapping[str, str], followed: Mapping[str, str]
) -> tuple[Blank, ...]:
    """Two lines for each text: what is told, and where it is from."""
    made: list[Blank] = []
    for key, label in labels.items():
        below = f" Empty: as the one that it is like has it, “{followed[key]}”" if key in followed else ""
        made.append(Blank(key, label, f"{hints[key]} {_BRACES}{below}"))
        made.append(Blank(key + SOURCE, f"{label}: source", _SOURCE_AND_PLACE))
    return tuple(made)


def _followed(name: str, known: Mapping[str, Follows], order: Mapping[str, str]) -> dict[str, str]:
    """The lines that a table takes from those that it is like."""
    one = known.get(name)
    if one is None:
        return {}
    whole = lines_with_others(one, known, order)
    return {key: told.text for key, told in whole.items() if key not in one.lines}


def _words_in(words: Collection[str], what: str) -> str:
    return f"{what}, parted by commas: {', '.join(words)}."
