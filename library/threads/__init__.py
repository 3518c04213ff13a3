"""The standard screw threads: which there are, their diameters, and what each fills into a worksheet."""

from library.threads.finding import find_threads, nearest_threads
from library.threads.model import Series, Thread
from library.threads.reading import all_series, all_threads

__all__ = ["Series", "Thread", "all_series", "all_threads", "find_threads", "nearest_threads"]
