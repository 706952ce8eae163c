"""How easily a text reads, by the formula of Flesch.

Flesch, R.: A new readability yardstick, Journal of Applied Psychology 32 (1948), 221-233: 60 to 70
is standard, above 70 fairly easy (the scale from memory). The library counts sentences, words and
syllables.
"""

import re

import readability

FLOOR = 60


def reading_ease(text: str) -> float:
    """Return the reading ease of an English text, about 0 (very hard) to 100 (very easy)."""
    sentences = [part for part in re.split(r"(?<=[.!?:;])\s+", text) if re.search("[A-Za-z]", part)]
    # One sentence a line, words and marks apart, as the library asks for it. Figures have no
    # syllables that it could count.
    lines = (" ".join(re.findall(r"[A-Za-z][A-Za-z'’-]*|[.,;:!?]", part)) for part in sentences)
    measured = readability.getmeasures("\n".join(lines), lang="en")
    return measured["readability grades"]["FleschReadingEase"]
