"""What every refusal of the library has: a sentence for the person who wanted something."""

from __future__ import annotations


class Refused(Exception):
    """Something was not done, and the person can be told why in a sentence.

    Attributes:
        sentence: what stands in the way, where, and what to do.

    Example:
        >>> Refused("The disk is full. Make room on it.").sentence
        'The disk is full. Make room on it.'
    """

    def __init__(self, sentence: str) -> None:
        self.sentence = sentence
        super().__init__(sentence)
