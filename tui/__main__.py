"""``python -m tui`` is ``heelclear``."""

import sys

from tui.main import main

sys.exit(main())
