"""Tables and drawings of the conversion in the reader's units: as a whole or not at all, so that no table and no drawing mixes two systems."""

import re
from dataclasses import replace

from inspector.conversion.chapters import Bar, Bars, Curve, Drawing, Graph, Lines
from inspector.errors import InspectorError
from inspector.quantities import convert, in_units, parse_number, show

_NUMBER = "[+−-]?[0-9][0-9\u00a0 ]*(?:[.,][0-9]+)?"
_VALUES = re.compile(rf"({_NUMBER})( to | ?– ?| / )?({_NUMBER})?")
_WITH_UNIT = re.compile(rf"({_NUMBER}(?:(?: to | ?– ?| / ){_NUMBER})?)[ \u00a0]([^\s\d,;]+)")
_HEADED = re.compile(r"(.*?)(, | )([^\s,]+)")
# units that the reader of a US report would expect otherwise, wherever they stand beside a number or after "in" or a comma
_SI_UNITS = "mm|cm|m|m²|m³|kg|t|kg/m³|t/m³|t/m²|t/m|kN|kW|kPa|bar|°C|t·m|t/cm|kg/nmi|g/kWh|l/h|t/day"
_SI_LEFT = re.compile(rf"(?:[0-9][ \u00a0]?|\bin |, |^| )(?:{_SI_UNITS})(?=$|[\s,;.:)/])")


def converts(unit: str, units: str) -> str:
    """The unit that a reader of `units` sees instead of this one; "" where it stays or is none of ours."""
    try:
        target = in_units(1.0, unit, units)[1] if unit else ""
    except InspectorError:
        return ""
    return target if target != unit else ""


def drawing_in(drawing: Drawing, units: str) -> Drawing:
    """The same drawing with values and units in the reader's system."""
    if isinstance(drawing, Bars):
        target = converts(drawing.unit, units)
        return replace(drawing, unit=target, bars=tuple(_bar(bar, drawing.unit, target) for bar in drawing.bars)) if target else drawing
    return _graph(drawing, units) if isinstance(drawing, Graph) else drawing


def _bar(bar: Bar, unit: str, target: str) -> Bar:
    return replace(bar, **{name: None if (value := getattr(bar, name)) is None else convert(value, unit, target) for name in ("low", "point", "high", "limit")})


def _graph(drawing: Graph, units: str) -> Graph:
    (x_label, x_unit, x_to), (y_label, y_unit, y_to) = (_axis(label, units) for label in (drawing.x_label, drawing.y_label))
    def place(point: tuple[float, float]) -> tuple[float, float]:
        return convert(point[0], x_unit, x_to) if x_to else point[0], convert(point[1], y_unit, y_to) if y_to else point[1]
    curves: tuple[Curve, ...] = tuple(replace(one, points=tuple(map(place, one.points))) for one in drawing.curves)
    return replace(drawing, x_label=x_label, y_label=y_label, curves=curves, mark_x=None if drawing.mark_x is None else place((drawing.mark_x, 0.0))[0])


def _axis(label: str, units: str) -> tuple[str, str, str]:
    """(label, unit, unit of the reader or "") of an axis labelled "what, unit"."""
    name, _, unit = label.rpartition(", ")
    target = converts(unit, units)
    return (f"{name}, {target}" if target else label), unit, target


def table_in(lines: Lines, units: str) -> Lines:
    """The table with every number in the reader's units; where some of it cannot be told so, the whole stays as it is and its title says "SI"."""
    if units != "us":
        return lines
    heads = [_head(title, units) for title in lines.headings]
    rows = tuple(tuple(_cell(text, *heads[at][1:], units) for at, text in enumerate(row)) for row in lines.rows)
    told = replace(lines, headings=tuple(head[0] for head in heads), rows=rows)
    everything = (told.title, *told.headings, *(cell for row in rows for cell in row), told.note)
    return replace(lines, title=f"{lines.title} (SI)") if any(_SI_LEFT.search(text) for text in everything) else told


def _head(title: str, units: str) -> tuple[str, str, str]:
    found = _HEADED.fullmatch(title)
    target = converts(found[3], units) if found else ""
    return (f"{found[1]}{found[2]}{target}", found[3], target) if target else (title, "", "")


def _cell(text: str, unit: str, target: str, units: str) -> str:
    """A cell under a heading with a unit, or one that carries its own; any other stays."""
    if target and (found := _VALUES.fullmatch(text)):
        return "".join(_turned(part, unit, target) if at != 1 else part for at, part in enumerate(found.groups()) if part)
    if (found := _WITH_UNIT.fullmatch(text)) and (own := converts(found[2], units)):
        ends = _VALUES.fullmatch(found[1])
        return "".join(_turned(part, found[2], own) if at != 1 else part for at, part in enumerate(ends.groups()) if part) + f" {own}"
    return text


def _turned(number: str, unit: str, target: str) -> str:
    """One number, as many as three significant digits, with its plus where it had one."""
    value = convert(parse_number(number.strip()), unit, target)
    shown = show(float(f"{value:.3g}"), target).removesuffix(f" {target}")
    return f"+{shown}" if number.startswith("+") else shown
