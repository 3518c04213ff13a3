"""The standard screw threads: which there are, their diameters, and what each fills into a calculation."""

from library.threads.filling import NotChosen, choose, texts_for
from library.threads.finding import find_threads, nearest_threads
from library.threads.model import Series, Thread
from library.threads.reading import all_series, all_threads

__all__ = [
    "NotChosen",
    "Series",
    "Thread",
    "all_series",
    "all_threads",
    "choose",
    "find_threads",
    "nearest_threads",
    "texts_for",
]
