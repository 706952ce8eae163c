"""The pages beside the walk that are looked at, of the demo."""

from inspector.demo.portfolio import PORTFOLIO

FIRST = PORTFOLIO[0].id
OF_FIRST = f"/inspection/{FIRST}"
PAGES = (
    "/",
    OF_FIRST,
    f"{OF_FIRST}/edit/inspection",
    f"{OF_FIRST}/edit/vessel",
    f"{OF_FIRST}/round?minutes=45&people=2",
    f"{OF_FIRST}/decide/hull",
    f"{OF_FIRST}/conversion",
    f"{OF_FIRST}/conversion/stability",
    f"{OF_FIRST}/particulars",
    f"{OF_FIRST}/rules",
    f"{OF_FIRST}/report",
    f"{OF_FIRST}/paper",
    f"{OF_FIRST}/check",
    "/compare?" + "&".join(f"id={each.id}" for each in PORTFOLIO),
    "/sharing",
    "/join",
    "/import",
    "/rates",
    "/backup",
)
