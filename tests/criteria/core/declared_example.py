"""The example in the description of declared criteria, as the text of a file."""

import re
import textwrap

from inspector.criteria.core import declared

EXAMPLE = textwrap.dedent(re.search(r"::\n\n((?:    .*\n|\n)+)", declared.__doc__)[1])
