"""The tables of money: prices and dates, the other costs beside the work, and what is sold."""

from inspector.conversion.core.particulars import Table, column

EXTREMES, TENTHS = "extremes", "P10 and P90"
# What a conversion costs beside the work of the yard; each is priced, or is named as not priced.
GROWTH = "growth of the work"
UNSEEN = "work not seen yet"
DOCKING = "docking"
KINDS = (
    GROWTH,
    UNSEEN,
    DOCKING,
    "design",
    "class and flag fees",
    "owner's supply",
    "supervision",
    "delivery",
    "lay-up",
    "other",
)
ONCE, SHARE = "once", "% of the work"
YARD_MONTH, IDLE_MONTH = "month in the yard", "month laid up"
PRICES = Table(
    "prices",
    "Currency and prices",
    "The currency of all amounts, when and where the prices applied, and when the work is done.",
    (
        column("currency", "Currency", kind="text", needed=True),
        column("priced_on", "Date of the prices", kind="date"),
        column("place", "Place of the yard", kind="text"),
        column("asking", "Asking price of the vessel", high=1e12),
        column("ends", "Low and high of all lines are", kind="choice", choices=(EXTREMES, TENTHS)),
        column("correlation", "Common cause of the lines, 0 to 1", low=0, high=1),
        column("definition", "Share of the work that is defined", "%", low=0, high=100),
        column("begins", "Work in the yard begins", kind="date"),
        column("rise", "Prices rise in a year by", "%", low=-20, high=100),
        column("laid_up", "Months laid up before the work", high=240),
    ),
    single=True,
)
COSTS = Table(
    "costs",
    "Costs beside the work",
    "What comes on top of the work lines, one row each. Type 0 for what costs nothing or is among "
    "the work lines already: a kind without a row is named as not priced, and keeps the total "
    "open.",
    (
        column("kind", "Kind", kind="choice", choices=KINDS, needed=True),
        column("name", "What", kind="text"),
        column("low", "Low", high=1e12),
        column("likely", "Likely", high=1e12),
        column("high", "High", high=1e12),
        column("per", "For", kind="choice", choices=(ONCE, SHARE, YARD_MONTH, IDLE_MONTH)),
    ),
)
SALES = Table(
    "sales",
    "Sale of what is removed",
    "What removed things may bring in, after taking them out.",
    (
        column("name", "What", kind="text", needed=True),
        column("low", "Low", needed=True, high=1e12),
        column("likely", "Likely", needed=True, high=1e12),
        column("high", "High", needed=True, high=1e12),
        column("buyer", "Where it would be sold", kind="text"),
    ),
)
TABLES = (PRICES, COSTS, SALES)
