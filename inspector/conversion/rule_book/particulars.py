"""What the dates of the rules depend on: the conversion itself, her engines, waters and weather."""

from inspector.conversion.core.particulars import Table, column

YES_NO = ("yes", "no")
REPLACED = ("none", "identical", "another kind or added")
POLAR = ("none", "northern", "southern", "both")
RULE_DATES = Table(
    "rule_dates",
    "Dates and extent of the conversion",
    "Which text of a rule applies follows from these. Each may stay empty: the rule then says what "
    "it waits for.",
    (
        column("starts", "Work of the conversion starts", kind="date"),
        column("new_type", "She becomes another type of ship", kind="choice", choices=YES_NO),
        column("lengthened", "Change of length", "m", low=-100, high=200),
        column("freeboard", "Freeboard assigned anew", kind="choice", choices=YES_NO),
        column("engines", "Main or generator engines replaced", kind="choice", choices=REPLACED),
        column("engines_on", "Replaced engines fitted on", kind="date"),
        column("rpm", "Rated speed of the replaced engines", "rpm", low=100, high=4000),
        column("power_after", "Propulsion power after", "kW", high=60_000),
        column("polar", "Polar waters", kind="choice", choices=POLAR),
        column("kept_days", "Days in waters where nothing may go over", "days", high=400),
        column("house_height", "Deck height of a new house", "m", low=1.8, high=6),
        column("air_hot", "Hottest air at the engines", "°C", low=0, high=60),
        column("sea_hot", "Warmest sea water", "°C", low=0, high=40),
        column("air_cold", "Coldest air on the route", "°C", low=-60, high=20),
        column("cooled", "Charge air is cooled", kind="choice", choices=YES_NO),
        column(
            "rated_tropical",
            "Rating holds at 45 °C air and 32 °C water",
            kind="choice",
            choices=YES_NO,
        ),
    ),
    single=True,
)
TABLES = (RULE_DATES,)
