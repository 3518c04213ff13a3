"""Whole screens, one file each, and the table by which one screen opens another.

A screen that opens another takes it from here (``screens.HelpScreen(...)``): its file is loaded when it is first
opened, and no screen's file has to import that of another.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from tui.actions import ACTIONS, Action
from tui.doors import lazily, load

if TYPE_CHECKING:
    from tui.screens.actions import ActionsScreen as ActionsScreen
    from tui.screens.beside import calculation_beside as calculation_beside
    from tui.screens.beside import calculation_in_a_line as calculation_in_a_line
    from tui.screens.beside import list_in_a_line as list_in_a_line
    from tui.screens.beside import tool_beside as tool_beside
    from tui.screens.beside import tool_in_a_line as tool_in_a_line
    from tui.screens.calculations import CalculationsScreen as CalculationsScreen
    from tui.screens.calculator import CalculatorScreen as CalculatorScreen
    from tui.screens.cards.batch import BatchScreen as BatchScreen
    from tui.screens.cards.card import CardScreen as CardScreen
    from tui.screens.cards.card_navigation import to_the_cards as to_the_cards
    from tui.screens.cards.cards import CardsScreen as CardsScreen
    from tui.screens.cards.from_calculator import begin_from as begin_from
    from tui.screens.cards.life import LifeScreen as LifeScreen
    from tui.screens.cards.pick import PickScreen as PickScreen
    from tui.screens.cards.sheet import SheetScreen as SheetScreen
    from tui.screens.cards.sheet import printed_sheet as printed_sheet
    from tui.screens.cautions import CautionsScreen as CautionsScreen
    from tui.screens.change_book import ChangeBookScreen as ChangeBookScreen
    from tui.screens.change_flow import take_back as take_back
    from tui.screens.changes import ChangesScreen as ChangesScreen
    from tui.screens.compare import CompareScreen as CompareScreen
    from tui.screens.confirm import ConfirmScreen as ConfirmScreen
    from tui.screens.conflict import ConflictScreen as ConflictScreen
    from tui.screens.draft import DraftScreen as DraftScreen
    from tui.screens.draft_screens import ask_to_leave as ask_to_leave
    from tui.screens.draft_screens import of_this_run as of_this_run
    from tui.screens.draft_screens import old_drafts as old_drafts
    from tui.screens.draft_screens import put_away_old as put_away_old
    from tui.screens.drafts import DraftsScreen as DraftsScreen
    from tui.screens.entry import EntryScreen as EntryScreen
    from tui.screens.entry import cautions_of as cautions_of
    from tui.screens.entry_history import EntryHistoryScreen as EntryHistoryScreen
    from tui.screens.help import HelpScreen as HelpScreen
    from tui.screens.own_table import OwnTableScreen as OwnTableScreen
    from tui.screens.own_table_forms import open_form as open_form
    from tui.screens.print import PrintScreen as PrintScreen
    from tui.screens.printing import printed_entry as printed_entry
    from tui.screens.review_change import ReviewChangeScreen as ReviewChangeScreen
    from tui.screens.table_forms import CopyForm as CopyForm
    from tui.screens.table_forms import NewEntryForm as NewEntryForm
    from tui.screens.table_forms import NewFamilyForm as NewFamilyForm
    from tui.screens.table_forms import RenameForm as RenameForm
    from tui.screens.texts_form import TextsForm as TextsForm
    from tui.screens.threads import ThreadsScreen as ThreadsScreen
    from tui.screens.value_form import ValueFormScreen as ValueFormScreen

SCREENS = {
    "ActionsScreen": "tui.screens.actions",
    "BatchScreen": "tui.screens.cards.batch",
    "CalculationsScreen": "tui.screens.calculations",
    "CalculatorScreen": "tui.screens.calculator",
    "CardScreen": "tui.screens.cards.card",
    "CardsScreen": "tui.screens.cards.cards",
    "CautionsScreen": "tui.screens.cautions",
    "ChangeBookScreen": "tui.screens.change_book",
    "ChangesScreen": "tui.screens.changes",
    "CompareScreen": "tui.screens.compare",
    "ConfirmScreen": "tui.screens.confirm",
    "ConflictScreen": "tui.screens.conflict",
    "CopyForm": "tui.screens.table_forms",
    "DraftScreen": "tui.screens.draft",
    "DraftsScreen": "tui.screens.drafts",
    "EntryHistoryScreen": "tui.screens.entry_history",
    "EntryScreen": "tui.screens.entry",
    "HelpScreen": "tui.screens.help",
    "LifeScreen": "tui.screens.cards.life",
    "NewEntryForm": "tui.screens.table_forms",
    "NewFamilyForm": "tui.screens.table_forms",
    "OwnTableScreen": "tui.screens.own_table",
    "PickScreen": "tui.screens.cards.pick",
    "PrintScreen": "tui.screens.print",
    "RenameForm": "tui.screens.table_forms",
    "ReviewChangeScreen": "tui.screens.review_change",
    "SheetScreen": "tui.screens.cards.sheet",
    "TextsForm": "tui.screens.texts_form",
    "ThreadsScreen": "tui.screens.threads",
    "ValueFormScreen": "tui.screens.value_form",
}
"""Every screen that another one opens with something in its hands, and the module that it lies in."""

OPENED_BY_A_KEY = {name: module for module, _, name in (one.opens.rpartition(".") for one in ACTIONS) if name}
"""The screens that a row of ``tui/actions.py`` opens, with nothing in hand but the session."""


def opened_by(action: Action) -> Any:
    """The class of the screen that an action opens; it takes the session."""
    module, _, name = action.opens.rpartition(".")
    return load(module, name)


PARTS = {
    "ask_to_leave": "tui.screens.draft_screens",
    "begin_from": "tui.screens.cards.from_calculator",
    "calculation_beside": "tui.screens.beside",
    "calculation_in_a_line": "tui.screens.beside",
    "cautions_of": "tui.screens.entry",
    "list_in_a_line": "tui.screens.beside",
    "of_this_run": "tui.screens.draft_screens",
    "old_drafts": "tui.screens.draft_screens",
    "open_form": "tui.screens.own_table_forms",
    "printed_entry": "tui.screens.printing",
    "put_away_old": "tui.screens.draft_screens",
    "printed_sheet": "tui.screens.cards.sheet",
    "take_back": "tui.screens.change_flow",
    "to_the_cards": "tui.screens.cards.card_navigation",
    "tool_beside": "tui.screens.beside",
    "tool_in_a_line": "tui.screens.beside",
}
"""What a screen does with the code of another one: a card begun in the calculator, a tool beside the list, the way to
the cards."""

if not TYPE_CHECKING:
    __getattr__ = lazily(SCREENS | OPENED_BY_A_KEY | PARTS)
