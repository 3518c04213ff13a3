"""Begin a shop's own book: a folder with a file that explains itself."""

from __future__ import annotations

import os
from pathlib import Path

from library.errors import no_room
from library.files.disk import DISK, Disk
from library.files.lay_folder import clear_unfinished, lay_folder
from library.files.staging import is_staging
from library.sanitize import sanitize

STARTER = "ours.toml"

_STARTER_TEXT = """\
# This shop's own book of tool geometry.
#
# What stands here covers what came with Heelclear, key by key: an entry with the id of a shipped one needs only
# what this shop does differently. Everything after a # is a remark. Any number of files may lie in this folder,
# with any names that end in .toml, and folders too; put things where you would look for them.
#
# See what there is:          heelclear list
# See one entry, with its id: heelclear show tap-spiral-point-plain-steel
# See whether all is well:    heelclear check

schema = 1

# Take the # away from the lines below and change them, to make an entry of your own.

# [[entry]]
# id = "bronze-bushing-tap"                # small letters, digits and hyphens
# family = "tap"
# title = "Tap for the bronze bushings"
# work_material = "bronze"
# synonyms = ["bushing tap"]               # other words to find it by
# cautions = ["eyes", "wheel-rating"]
# rake_angle = { low = "3 deg", usual = "5 deg", high = "8 deg", source = "shop" }
# relief_form = { usual = "eccentric", source = "common practice" }
# land_width = { usual = "1/8 in", source = "from memory", note = "Check on the next new one." }
# notes = \"\"\"
# As many lines as you like.
# \"\"\"
#
# A measure stands in quotes with its unit: "8 deg", "7 deg 30 min", "0.040 in", "1-1/2 in", "3.2 mm".
# The source of a value is "shop" (decided or measured here), "common practice", "from memory", or the id of a
# [[source]] together with the place in it:

# [[source]]
# id = "our-notebook"
# title = "The tool room's notebook"
# year = "1998"
#
# and then: chamfer_relief_angle = { usual = "4 deg", source = "our-notebook", place = "page 12" }
#
# What holds for many tools is said once, as a rule; an entry takes from it what it does not say itself:

# [[rule]]
# id = "our-bronze-taps"
# title = "our taps for bronze"            # as behind "by the rule for"
# family = "tap"
# work_material = "bronze"                 # or words of their names: when = ["hand tap"]; left out, it is for all of them
# flutes = { usual = 3, source = "shop" }
#
# Tools of a sort that the list of families does not have are a family of your own. Say what they are ground like, and
# calculations, cautions and the order of work follow; or say which surfaces are relieved, the one that is mostly ground
# first: land, thread-land, chamfer, cone, shoulder, lip, bevel, end.

# [[family]]
# id = "flat-drill"
# title = "Flat drills"
# like = "twist-drill"                     # or: surfaces = ["lip", "land"]
"""

_IGNORE_TEXT = """\
# Made by programs while they work; nothing to keep.
.lock
.heelclear-*.saving
.heelclear-*.laying
.heelclear-*.placing
*~
.*.sw?
"""

_ATTRIBUTES_TEXT = """\
# A book is text whose line ends stay as they are, so that git shows only what somebody changed.
*.toml -text diff
"""

_FILES = {STARTER: _STARTER_TEXT, ".gitignore": _IGNORE_TEXT, ".gitattributes": _ATTRIBUTES_TEXT}


class NotStarted(Exception):
    """A book that could not be begun; the message is a sentence for the person who asked for it."""


def new_book(folder: Path, disk: Disk = DISK) -> list[Path]:
    """Make a folder with a starter file, and what git should know of it: all of it, or nothing.

    Nothing that is there already is changed; a ``.gitignore`` or ``.gitattributes`` that is there stays.

    Args:
        folder: to make, or one that holds no ``.toml`` file yet.
        disk: the calls to use.

    Returns:
        The files that were written.

    Raises:
        NotStarted: when a book is there already, or the system refuses.
    """
    shown = sanitize(str(folder))
    try:
        if folder.exists() and not folder.is_dir():
            raise NotStarted(f"{shown} is a file. Name a folder that is not there yet.")
        clear_unfinished(folder, disk)
        if holds_a_book(folder):
            raise NotStarted(f"There is a book in {shown} already. Name another folder.")
        files = {name: text.encode() for name, text in _FILES.items() if not os.path.lexists(folder / name)}
        return lay_folder(folder, files, disk)
    except OSError as error:
        raise NotStarted(f"The book in {shown} could not be begun{why_not(error, folder)}") from error


def why_not(error: OSError, folder: Path) -> str:
    """The end of a sentence on a folder that could not be made, and what to do about it."""
    if full := no_room(error, folder):
        return f". {full} Nothing was left there."
    return f": {sanitize(error.strerror or str(error))}. Name another folder."


def holds_a_book(folder: Path) -> bool:
    """Whether a folder, or one in it, has a ``.toml`` file; one that a killed program left half made counts for none."""
    return folder.is_dir() and any(
        not any(map(is_staging, path.relative_to(folder).parts)) for path in folder.rglob("*.toml")
    )
