"""The plain commands: the same book and the same calculations without a screen.

Each module has ``run(options) -> int`` and is named like its command; what may stand behind the command on the
command line is in ``arguments``, so that ``--help`` loads none of them.
"""
