"""The page of one entry of the book: a line for each value, what is ground and how, its sources, its cautions."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from geometry.quantities import quantity
from library.book.grades import DOCUMENTS, GRADES, grade
from library.book.model import Book, Citation, Entry, Family, Value
from library.book.tool_materials import tool_material
from library.calc.cautions import cautions_for
from library.calc.citation import briefly
from library.calc.in_units import BOOK, as_written, in_units, shown_span
from library.calc.wording import remarks, span
from library.guidance.setups import for_entry, setups_of
from library.guidance.told import Convert
from library.guidance.troubles import symptoms_of
from library.guidance.wheels import Ground, recommended_for
from library.pages import setup as setup_parts
from library.pages import troubles as trouble_parts
from library.pages import wheels as wheel_parts
from library.pages.cautions import at_arms_length, in_full
from library.pages.entry_sources import band_tags, legend, tag_of, tags
from library.pages.page import Block, Labelled, Named, Page, Said, Section, Table, Values
from library.units.show import show
from library.units.system import Display

UNREAD = "Some lines of this entry could not be read; 'heelclear check' says which and what to do."
HEADING = ("", "usual", "low", "high", "src")
UNREADABLE = "not readable"

GUIDE = {"ground": "GRIND", "never_ground": "NEVER", "": "NOTE", "order": "ORDER", "check_after": "CHECK", "fails": "FAILS"}  # fmt: skip
"""What is told of the work and behind which label; the note is the entry's own, all else its family's."""

BEFORE_SET_UP = ("GRIND", "NEVER", "NOTE", "ORDER")
"""What stands before the steps of its set-up."""


def entry_page(
    book: Book,
    entry: Entry,
    display: Display | None = None,
    *,
    sources: bool = False,
    cautions: bool = False,
) -> Page:
    """What the book knows of one kind of tool, in about as many lines as are read at once.

    Args:
        book: gives family, cautions and sources.
        entry: what to show.
        display: the units that are worked in; without one everything stands as the book has it.
        sources: tells each value's note and source in full too, and more of the family.
        cautions: tells each caution in full with its source.
    """
    warned = cautions_for(None, entry, book)
    about: list[Block] = [Said((about_entry(book, entry),), "quiet"), *([Said((UNREAD,))] if entry.unread else [])]  # fmt: skip
    sections = [
        Section(
            "", (*about, values_table(book, entry, display, with_bands=True), *_as_written(entry, display))
        ),
        Section("", (guide(book, entry, display, whole=sources),)),
    ]
    if sources:
        sections += [
            *about_family(book, entry),
            *how_it_is_ground(book, entry, display),
            in_detail(book, entry.values.values(), display),
        ]
    besides = setup_parts.citations(for_entry(book, entry), whole=sources)
    more = "" if sources else ": --sources"
    foot: list[Block] = [legend(book, entry, full=sources, more=more, besides=besides)]
    if not cautions:
        foot.append(at_arms_length(warned, "--cautions"))
    sections.append(Section("", tuple(foot)))
    if cautions:
        sections.append(in_full(warned, book))
    return Page(entry.title, tuple(sections))


def about_entry(book: Book, entry: Entry) -> str:
    """What it is, what it cuts, which book it is from, and its id."""
    family, material = book.families.get(entry.family), book.materials.get(entry.work_material)
    tools = family.title if family else entry.family
    work = material.title if material else entry.work_material
    layer = "the shop's own" if entry.layer == "shop" else "shipped"
    return f"{tools}. Work: {work or 'not said'}; {layer} ({entry.id})."


def values_table(
    book: Book, entry: Entry, display: Display | None = None, *, with_bands: bool = False
) -> Table:
    """A line for each value: the usual one, the ends of its range, the tag of its source.

    Args:
        book: has the documents.
        entry: whose values they are.
        display: the units that are worked in; without one everything stands as the book has it.
        with_bands: gives each band of a value a line of its own below it.
    """
    tagged = tags(book, entry)
    rows: list[tuple[str, ...]] = []
    for key, value in entry.values.items():
        as_shown = value if display is None else in_units(value, display)
        rows.append((*_cells(as_shown), tagged[key]))
        if with_bands:
            for band, tag in zip(as_shown.bands, band_tags(book, entry, value), strict=True):
                _, *cells = _cells(band.value)
                rows.append((f"  {band.in_words}", *cells, tag))
    return Table(HEADING, tuple(rows))


def _as_written(entry: Entry, display: Display | None) -> Iterator[Said]:
    """What the book has in its own writing, where that is shown in another unit."""
    values = [
        (quantity(value.key).title + (f" {band}" if band else ""), as_written(one, display))
        for value in entry.values.values()
        for band, one in (("", value), *((band.in_words, band.value) for band in value.bands))
    ]
    own = [f"{title} {text.removeprefix(BOOK)}" for title, text in values if text]
    if own:
        yield Said((f"As the book has it: {'; '.join(own)}.",), "quiet")


def _cells(value: Value) -> tuple[str, str, str, str]:
    usual, low, high = (one.text if one else "" for one in (value.usual, value.low, value.high))
    if value.unread and value.first() is None:
        usual = UNREADABLE
    return quantity(value.key).title, usual, low, high


def guide(
    book: Book,
    entry: Entry,
    display: Display | None = None,
    *,
    by_lines: bool = False,
    whole: bool = True,
) -> Labelled:
    """What to grind and what never, what is special with this entry, order and set-up, what to check, how it fails.

    Args:
        book: has the family.
        entry: gives the note.
        display: the units that are worked in; without one everything stands as the book has it.
        by_lines: begins each line of a text on a line of its own, where a page scrolls.
        whole: tells how it fails in full, and not in its first sentence.
    """
    family = book.families.get(entry.family)
    texts = {**(family.texts if family else {}), "": entry.notes}
    told = {label: texts.get(key, "").strip() for key, label in GUIDE.items()}
    if not whole and (fails := told[GUIDE["fails"]]):
        told[GUIDE["fails"]] = f"{fails.partition('. ')[0].removesuffix('.')}."
    parts = [(label, text if by_lines else " ".join(text.split())) for label, text in told.items() if text]
    setup = for_entry(book, entry)
    if setup is not None:
        besides = setup_parts.citations(setup, whole=by_lines)
        behind = sum(label in BEFORE_SET_UP for label, _ in parts)
        parts.insert(
            behind,
            setup_parts.beside_entry(
                setup,
                lambda citation: tag_of(book, citation, entry, besides),
                converting(display),
                by_lines=by_lines,
            ),
        )
    return Labelled(tuple(parts))


def converting(display: Display | None) -> Convert | None:
    """Writes a length in the unit that is worked in."""
    return None if display is None else lambda number, kind: show(number, kind, display)


def how_it_is_ground(book: Book, entry: Entry, display: Display | None) -> Iterator[Section]:
    """Every set-up of its family, the wheels for what is mostly ground, and every trouble, with the sources in words."""
    convert = converting(display)
    found = setups_of(book, entry.family)
    if found:
        yield Section("How it is ground", ())
        yield from setup_parts.in_full(book, found, convert)
    setup = for_entry(book, entry)
    if setup is not None and setup.surface:
        ground = Ground(tool_material(book, entry.family, entry), setup.surface)
        yield from wheel_parts.in_full(book, recommended_for(book, ground), convert)
    found_troubles = symptoms_of(book, entry.family, entry)
    if found_troubles:
        yield Section("Troubles", ())
        yield from trouble_parts.troubles(book, found_troubles, convert)


def in_hand(book: Book, value: Value, display: Display | None = None) -> str:
    """What belongs to a value in one paragraph, what is read first standing first.

    Where the book has it in another unit than that which is worked in, its own writing stands behind the name.

    Example:
        >>> from library.book.model import Measure, Source
        >>> value = Value("flutes", usual=Measure("4"), citation=Citation("from memory"), note="Count them.")
        >>> in_hand(Book({}), value)
        'Flutes. Count them. A guess; what a new tool of the same kind has is better, once it is measured. Source: from memory'
        >>> manual = Source("a", "A manual", grade="M")
        >>> in_hand(Book({}, sources={"a": manual}), Value("flutes", citation=Citation("published", "a", "page 3")))
        'Flutes. Source (M: military or national manual): A manual, page 3'
    """
    return " ".join(filter(None, in_hand_parts(book, value, display)))


def in_hand_parts(
    book: Book, value: Value, display: Display | None = None, *, brief: bool = False, with_span: bool = False
) -> tuple[str, str, str]:
    """The same in three parts: what is read first, the source, and what other sources have.

    Args:
        book: has the documents.
        value: of an entry.
        display: the units that are worked in; without one everything stands as the book has it.
        brief: tells the source by its title and the place in it alone.
        with_span: tells its range too, for where that stands nowhere else.
    """
    found = remarks(book, value, spoken_span=lambda one: shown_span(one, display))
    source, *more = found if not value.unread else ["", *found]
    if brief and source:
        source = f"Source: {briefly(book, value.citation)}"
    first = [part for part in more if not part.startswith("Another source")]
    others = [part for part in more if part not in first]
    if value.citation.label == "published" and source:
        source = source.replace("Source", f"Source{_graded(book, value.citation)}", 1)
    unread = [span(value)] if value.unread and value.first() is None else []
    own = f" B{own[1:]}." if (own := as_written(value, display)) else ""
    named = f": {shown_span(value, display)}." if with_span else f".{own}"
    before = " ".join((f"{quantity(value.key).title}{named}", *filter(None, (*unread, *first))))
    return before, source, " ".join(others)


def _graded(book: Book, citation: Citation) -> str:
    """What the letter of a document stands for, where it has one."""
    letter = grade(citation, book.sources)[0]
    return f" ({letter}: {GRADES[letter]})" if letter in DOCUMENTS else ""


def in_detail(book: Book, values: Iterable[Value], display: Display | None = None) -> Section:
    """Values with their note and source in full."""
    told: set[str] = set()
    return Section(
        "The values in full", (Values(tuple(_named(book, value, display, told) for value in values)),)
    )


def _named(book: Book, value: Value, display: Display | None, told: set[str]) -> Named:
    """A value with its range, and below it its source and whatever else belongs to it."""
    return Named(
        quantity(value.key).title,
        shown_span(value, display),
        below=tuple(remarks(book, value, told, lambda one: shown_span(one, display))),
    )


def about_family(book: Book, entry: Entry) -> Iterator[Section]:
    """What the tools of its family are, and whatever is told of them beside the work itself."""
    family = book.families.get(entry.family)
    if family is None:
        return
    yield Section(f"About {family.title.lower()}", tuple(_what(family, book.families.get(family.like))))
    for heading, text in family.texts.items():
        if heading not in GUIDE:
            yield Section(heading.replace("_", " ").capitalize(), (Said((text.strip(),)),), part=True)


def _what(family: Family, like: Family | None) -> Iterator[Block]:
    yield Said((family.what,))
    if like is not None:
        yield Said(
            (
                f"Ground like {like.title.lower()}: what the book does not say of these themselves, "
                "it says here of those.",
            ),
            "quiet",
        )
