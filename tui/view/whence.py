"""Where the texts in the calculations of one tool came from, as far as nobody typed them there just now."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from library.equipment.offers import Offer


@dataclass
class Whence:
    """What all calculations opened for a tool know of the texts that they share.

    Attributes:
        sought: what the tool was found with, by quantity: its size, its number of flutes, the class of its hole.
        kept: what was typed for a tool before, and stands there again, by quantity.
        brought: the machine or the wheel of which an arrow brought a text, by quantity.
        over: what the tool was found with and a person typed over, by quantity.
    """

    sought: dict[str, str] = field(default_factory=dict)
    kept: dict[str, str] = field(default_factory=dict)
    brought: dict[str, Offer] = field(default_factory=dict)
    over: dict[str, str] = field(default_factory=dict)

    def typed(self, key: str) -> None:
        """Know that a person typed a quantity himself, whatever stood there before."""
        if key in self.sought:
            self.over[key] = self.sought[key]
        for known in (self.sought, self.kept, self.brought):
            known.pop(key, None)

    def seek(self, texts: Mapping[str, str]) -> None:
        """Know what a tool was found with; an empty text means that nothing stands there any more."""
        for key, text in texts.items():
            self.typed(key)
            self.over.pop(key, None)
            if text:
                self.sought[key] = text

    def looked_for(self, texts: Mapping[str, str]) -> Whence:
        """The same, where a tool is only looked at with what it would be found with.

        Args:
            texts: by quantity; an empty one means that nothing would stand there.
        """
        looked = Whence(dict(self.sought), dict(self.kept), dict(self.brought), dict(self.over))
        looked.seek(texts)
        return looked

    def come_back_to(self, texts: Mapping[str, str]) -> tuple[str, ...]:
        """Know what stands there from before, without what the tool is found with.

        Returns:
            The quantities.
        """
        self.kept.clear()
        self.kept |= {
            key: text for key, text in texts.items() if text.strip() and not self.is_sought(key, text)
        }
        return tuple(self.kept)

    def bring(self, one: Offer, keys: Iterable[str]) -> None:
        """Know of which machine or wheel the texts of some quantities are."""
        for key in keys:
            self.typed(key)
            self.brought[key] = one

    def is_sought(self, key: str, text: str) -> bool:
        """Whether a text is only what the tool was found with."""
        return text != "" and self.sought.get(key) == text

    def is_kept(self, key: str, text: str) -> bool:
        """Whether a text stands there from before."""
        return text != "" and self.kept.get(key) == text

    def of_what(self, key: str, text: str) -> Offer | None:
        """The machine or the wheel that a text was brought of."""
        one = self.brought.get(key)
        return one if one is not None and text != "" and one.texts.get(key) == text else None

    def rewritten(self, key: str, old: str, new: str) -> None:
        """Know how a text is written in another unit."""
        for known in (self.sought, self.kept, self.over):
            if known.get(key) == old:
                known[key] = new
