"""The tables of money: currency and prices, and what removed things may be sold for."""

from inspector.conversion.core.particulars import Table, column

PRICES = Table(
    "prices",
    "Currency and prices",
    "The currency of all amounts, and when and where the prices applied.",
    (
        column("currency", "Currency", kind="text", needed=True),
        column("priced_on", "Date of the prices", kind="date"),
        column("place", "Place of the yard", kind="text"),
        column("asking", "Asking price of the vessel", high=1e12),
        column("correlation", "Common cause of the lines, 0 to 1", low=0, high=1),
        column("definition", "Share of the work that is defined", "%", low=0, high=100),
    ),
    single=True,
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
TABLES = (PRICES, SALES)
