"""The page of one entry of the book: a line for each value, what is ground and how, its sources, its cautions."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

from geometry.quantities import quantity
from geometry.sentences import Kind
from library.book.grades import DOCUMENTS, GRADES, grade
from library.book.model import Book, Citation, Entry, Family, Measure, Value
from library.book.tool_materials import tool_material
from library.calc.cautions import cautions_for
from library.calc.wording import remarks, span
from library.guidance.setups import for_entry, setups_of
from library.guidance.troubles import symptoms_of
from library.guidance.wheels import Ground, recommended_for
from library.pages import setup as setup_parts
from library.pages import troubles as trouble_parts
from library.pages import wheels as wheel_parts
from library.pages.cautions import at_arms_length, in_full
from library.pages.entry_sources import band_tags, legend, tag_of, tags
from library.pages.page import Block, Labelled, Named, Page, Said, Section, Table, Values

Convert = Callable[[float, Kind], str]
"""Writes a length in the unit that is worked in; loaded behind the first frame."""

UNREAD = "Some lines of this entry could not be read; 'heelclear check' says which and what to do."
HEADING = ("", "usual", "low", "high", "src", "is")
UNREADABLE = "not readable"

GUIDE = {"ground": "GRIND", "never_ground": "NEVER", "": "NOTE", "order": "ORDER", "check_after": "CHECK", "fails": "FAILS"}  # fmt: skip
"""What is told of the work and behind which label; the note is the entry's own, all else its family's."""

BEFORE_SET_UP = ("GRIND", "NEVER", "NOTE", "ORDER")
"""What stands before the steps of its set-up."""


def entry_page(
    book: Book,
    entry: Entry,
    convert: Convert | None = None,
    *,
    sources: bool = False,
    cautions: bool = False,
) -> Page:
    """What the book knows of one kind of tool, in about as many lines as are read at once.

    Args:
        book: gives family, cautions and sources.
        entry: what to show.
        convert: writes lengths in the unit that is worked in, once units are loaded.
        sources: tells each value's note and source in full too, and more of the family.
        cautions: tells each caution in full with its source.
    """
    warned = cautions_for(None, entry, book)
    about: list[Block] = [Said((about_entry(book, entry),), "quiet"), *([Said((UNREAD,))] if entry.unread else [])]  # fmt: skip
    sections = [
        Section("", (*about, values_table(book, entry, convert, with_bands=True))),
        Section("", (guide(book, entry, convert, whole=sources),)),
    ]
    if sources:
        sections += [
            *about_family(book, entry),
            *how_it_is_ground(book, entry, convert),
            in_detail(book, entry.values.values(), convert),
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
    book: Book, entry: Entry, convert: Convert | None = None, *, with_bands: bool = False
) -> Table:
    """A line for each value: the usual one, the ends of its range, the tag of its source.

    Lengths that the book has in another unit stand again at the end of the line in the one that is worked in.

    Args:
        book: has the documents.
        entry: whose values they are.
        convert: writes lengths in the unit that is worked in, once units are loaded.
        with_bands: gives each band of a value a line of its own below it.
    """
    tagged = tags(book, entry)
    rows: list[tuple[str, ...]] = []
    for key, value in entry.values.items():
        rows.append((*_cells(value), tagged[key], _converted(value, convert) if convert else ""))
        if with_bands and value.bands:
            rows += _band_rows(book, entry, value, convert)
    columns = len(HEADING) if any(row[-1] for row in rows) else len(HEADING) - 1
    return Table(HEADING[:columns], tuple(row[:columns] for row in rows))


def _band_rows(book: Book, entry: Entry, value: Value, convert: Convert | None) -> Iterator[tuple[str, ...]]:
    for band, tag in zip(value.bands, band_tags(book, entry, value), strict=True):
        _, *cells = _cells(band.value)
        yield (f"  {band.in_words}", *cells, tag, _converted(band.value, convert) if convert else "")


def _cells(value: Value) -> tuple[str, str, str, str]:
    usual, low, high = (one.text if one else "" for one in (value.usual, value.low, value.high))
    if value.unread and value.first() is None:
        usual = UNREADABLE
    return quantity(value.key).title, usual, low, high


def guide(
    book: Book, entry: Entry, convert: Convert | None = None, *, by_lines: bool = False, whole: bool = True
) -> Labelled:
    """What to grind and what never, what is special with this entry, order and set-up, what to check, how it fails.

    Args:
        book: has the family.
        entry: gives the note.
        convert: writes lengths in the unit that is worked in, once units are loaded.
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
                setup, lambda citation: tag_of(book, citation, entry, besides), convert, by_lines=by_lines
            ),
        )
    return Labelled(tuple(parts))


def how_it_is_ground(book: Book, entry: Entry, convert: Convert | None) -> Iterator[Section]:
    """Every set-up of its family, the wheels for what is mostly ground, and every trouble, with the sources in words."""
    found = setups_of(book, entry.family)
    if found:
        yield Section("How it is ground", ())
        yield from setup_parts.in_full(book, found, convert)
    setup = for_entry(book, entry)
    if setup is not None and setup.surface:
        ground = Ground(tool_material(book, entry.family, entry), setup.surface)
        yield from wheel_parts.in_full(book, recommended_for(book, ground), convert)
    found_troubles = symptoms_of(book, entry.family)
    if found_troubles:
        yield Section("Troubles", ())
        yield from trouble_parts.troubles(book, found_troubles, convert)


def in_hand(book: Book, value: Value) -> str:
    """What belongs to a value in one paragraph, what is read first standing first.

    Example:
        >>> from library.book.model import Source
        >>> value = Value("flutes", usual=Measure("4"), citation=Citation("from memory"), note="Count them.")
        >>> in_hand(Book({}), value)
        'Flutes. Count them. A guess; what a new tool of the same kind has is better, once it is measured. Source: from memory'
        >>> manual = Source("a", "A manual", grade="M")
        >>> in_hand(Book({}, sources={"a": manual}), Value("flutes", citation=Citation("published", "a", "page 3")))
        'Flutes. Source (M: military or national manual): A manual, page 3'
    """
    source, *more = remarks(book, value) if not value.unread else ["", *remarks(book, value)]
    first = [part for part in more if not part.startswith("Another source")]
    others = [part for part in more if part not in first]
    if value.citation.label == "published" and source:
        source = source.replace("Source", f"Source{_graded(book, value.citation)}", 1)
    unread = [span(value)] if value.unread and value.first() is None else []
    told = " ".join(part for part in (*unread, *first, source, *others) if part)
    return f"{quantity(value.key).title}. {told}"


def _graded(book: Book, citation: Citation) -> str:
    """What the letter of a document stands for, where it has one."""
    letter = grade(citation, book.sources)[0]
    return f" ({letter}: {GRADES[letter]})" if letter in DOCUMENTS else ""


def in_detail(book: Book, values: Iterable[Value], convert: Convert | None = None) -> Section:
    """Values with their note and source in full."""
    told: set[str] = set()
    return Section(
        "The values in full", (Values(tuple(_named(book, value, convert, told) for value in values)),)
    )


def _named(book: Book, value: Value, convert: Convert | None, told: set[str]) -> Named:
    """A value with its range, and below it its source and whatever else belongs to it."""
    again = _converted(value, convert) if convert is not None else ""
    return Named(
        quantity(value.key).title,
        span(value) + (f"  = {again}" if again else ""),
        below=tuple(remarks(book, value, told)),
    )


def _converted(value: Value, convert: Convert) -> str:
    """The values again in the unit that is worked in, where the book has them in another."""
    if quantity(value.key).kind is not Kind.LENGTH:
        return ""
    measures = [
        one for one in (value.low, value.usual, value.high) if one is not None and not one.per_diameter
    ]
    written = [convert(one.number, Kind.LENGTH) for one in measures]
    return " / ".join(written) if any(map(_differs, measures, written)) else ""


def _differs(measure: Measure, written: str) -> bool:
    return measure.text.split()[-1:] != written.split()[-1:]


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
