"""Services: saving, git, drafts, the person's editor and file watching, for the screens.

A service knows no screen and not the program: it is given what it needs of the program (``host.Host``), and it
returns what came of it. A screen says that to the person, and opens the next screen.
"""
