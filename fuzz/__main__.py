"""Start of `python -m fuzz`."""

import sys

from fuzz.run import main

sys.exit(main())
