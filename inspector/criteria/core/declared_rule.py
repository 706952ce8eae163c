"""How a declared criterion judges: its terms, its bands in the case at hand, and its limit."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import date
from functools import cached_property

from inspector.criteria.core.bands import Band, Bands
from inspector.criteria.core.decimals import nearer_end
from inspector.criteria.core.declared_terms import (
    OPERATIONS,
    Raw,
    Term,
    Terms,
    names_in,
    names_in_conditions,
    names_in_text,
)
from inspector.criteria.core.judgement import Judgement, refuse
from inspector.criteria.core.limit_sets import limit_prefix
from inspector.criteria.core.source import Source
from inspector.values.field import Field
from inspector.values.numbers import difference
from inspector.values.vocabulary import RATINGS

VALUE = "value"
COMPARED = ("at_most", "at_least", "between")
# operation of the value -> the one that brings an end back to the first input
INVERSE = {"difference": "sum", "sum": "difference", "ratio": "product", "percent_of": "share"}
Row = tuple[Band, Raw]


@dataclass(frozen=True)
class DeclaredRule:
    """The judging and the bands of one declared criterion.

    Parameters
    ----------
    raw : mapping
        Its table in the file, without faults.
    inputs : tuple of Field
        The first one is the number that is compared.
    sources : mapping of str to Source
        The sources of its file.
    """

    raw: Raw
    inputs: tuple[Field, ...]
    sources: Mapping[str, Source]

    def judge(self, limits: Mapping[str, float] | None = None, **values: Term) -> Judgement:
        """Judge checked values.

        Parameters
        ----------
        limits : mapping of str to float, optional
            Limit name -> value, where the criterion has limits.
        **values : float or int or str or date or None
            Input name -> value.

        Returns
        -------
        Judgement
        """
        terms = self._terms(values, limits or {})
        self._refuse(terms)
        self._refuse_without_value(terms)
        rows = self._rows(terms)
        if self._on_first_input or self.for_phone:
            ladder, number = self._for_first_input(rows, terms), terms.values[self._first]
        else:
            ladder, number = Bands(self._unit, tuple(band for band, _ in rows)), terms.values[VALUE]
        place = ladder.bands.index(ladder.band_of(number))
        return self._judged(terms, *rows[place])

    def bands(self, limits: Mapping[str, float] | None = None, **others: Term) -> Bands:
        """Return the bands of the first input.

        Parameters
        ----------
        limits : mapping of str to float, optional
            Limit name -> value.
        **others : float or int or str or date or None
            Input name -> value, for all inputs but the first.

        Returns
        -------
        Bands
        """
        terms = self._terms({self._first: None, **others}, limits or {})
        self._refuse(terms)
        return self._for_first_input(self._rows(terms), terms)

    @property
    def _first(self) -> str:
        return self.inputs[0].name

    @property
    def _unit(self) -> str:
        """The unit of the value."""
        return self.raw[VALUE]["unit"] if VALUE in self.raw else self.inputs[0].unit

    @cached_property
    def for_phone(self) -> bool:
        """Whether the bands can be known before the first input is."""
        # A phone is sent the bands before anybody reads the gauge.
        moving = self._names_that_move()
        used = {name for band in self.raw["bands"] for name in _names_of_band(band)}
        for refusal in self.raw.get("refused", ()):
            used |= names_in_conditions(refusal["when"])
        return not used & moving and (self._on_first_input or self._can_be_inverted(moving))

    @property
    def _on_first_input(self) -> bool:
        """Whether the ends of the bands are ends of the first input itself."""
        return VALUE not in self.raw or "bands_on" in self.raw

    def _names_that_move(self) -> set[str]:
        """The first input, and what changes with it."""
        # What moves with the reading is not known when the bands are sent.
        moving = {self._first, VALUE}
        for name, figure in self.raw.get("figures", {}).items():
            if names_in(figure) & moving:
                moving.add(name)
        return moving

    def _can_be_inverted(self, moving: set[str]) -> bool:
        name, operands = _operation(self.raw[VALUE])
        return name in INVERSE and operands[0] == self._first and not moving & set(operands[1:])

    def _for_first_input(self, rows: list[Row], terms: Terms) -> Bands:
        """The bands with their ends in the unit of the first input."""
        bands = tuple(band for band, _ in rows)
        if not self._on_first_input:
            name, operands = _operation(self.raw[VALUE])
            bands = tuple(_inverted(band, name, operands[1], terms) for band in bands)
        return Bands(self.inputs[0].unit, bands)

    def _terms(self, values: Mapping[str, Term], limits: Mapping[str, float]) -> Terms:
        """Return inputs, limits and figures of one case, each able to use those before it."""
        terms = Terms()
        for asked in self.inputs:
            terms.add(asked, values[asked.name])
        for raw in self.raw.get("limits", ()):
            terms.add(
                Field(raw["id"], raw["label"], unit=raw["unit"]), _limit_of(raw, terms, limits)
            )
        for name, figure in self.raw.get("figures", {}).items():
            unit = figure.get("unit", self._unit) if isinstance(figure, Mapping) else self._unit
            self._add_figure(terms, name, figure, unit)
        self._add_figure(terms, VALUE, self.raw.get(VALUE, self._first), self._unit)
        return terms

    def _add_figure(self, terms: Terms, name: str, figure: object, unit: str) -> None:
        """Take in the value of a figure with the unit in which it is shown."""
        value = terms.calculated(figure)
        if isinstance(figure, str):
            # A figure that is another name is formatted as that one.
            terms.add(replace(terms.fields[figure], name=name), value)
        else:
            kind = "date" if isinstance(value, date) else "number"
            terms.add(Field(name, name, kind, unit), value)

    def _refuse(self, terms: Terms) -> None:
        for refusal in self.raw.get("refused", ()):
            if terms.holds(refusal["when"]):
                blamed = refusal["input"]
                refuse(blamed, terms.values[blamed], self._filled(terms, refusal["why"]))

    def _refuse_without_value(self, terms: Terms) -> None:
        """Refuse a case in which nothing can be compared, with what it was to come from."""
        if terms.values[VALUE] is None:
            _, operands = _operation(self.raw[VALUE])
            names = [name for name in operands if isinstance(name, str)]
            shown = terms.filled(" and ".join(f"{name} {{{name}}}" for name in names))
            refuse(names[-1], terms.values[names[-1]], f"nothing can be calculated from {shown}")

    def _filled(self, terms: Terms, template: str, **words: str) -> str:
        """Return a text with its words and values; words may hold values themselves."""
        # Most texts have no place to fill, and words cost a look-up each.
        if "{" not in template:
            return template
        chosen = self.raw.get("words", {})
        words |= {name: terms.filled(terms.worded(raw)) for name, raw in chosen.items()}
        return terms.filled(template, **words)

    def _rows(self, terms: Terms) -> list[Row]:
        """The bands of this case by rising value, each with its table."""
        rows = [(self._band(raw, terms), raw) for raw in _present(self.raw["bands"], terms)]
        return _each_above_the_one_before(_stricter_ends(rows))

    def _band(self, raw: Raw, terms: Terms) -> Band:
        meaning = self._filled(terms, raw["meaning"])
        end = terms.calculated(_end_of(raw))
        return Band(end, "upto" in raw, raw["band"], raw.get("rating"), meaning)

    def _judged(self, terms: Terms, band: Band, raw: Raw) -> Judgement:
        """Return the judgement of the band that the number falls in."""
        absent = raw.get("without", ())
        value = None if "value" in absent else terms.values[VALUE]
        limit, margin = (None, None) if "limit" in absent else self._limit(terms, raw)
        template = raw.get("sentence", self.raw["sentence"])
        sentence = self._filled(terms, template, meaning=band.meaning, band=band.band)
        notes = tuple(self._notes(raw.get("notes", self.raw.get("notes", ())), terms))
        source = self.sources[raw["source"]] if "source" in raw else None
        return Judgement(
            band.band, band.rating, value, self._unit, limit, margin, sentence, notes, source
        )

    def _limit(self, terms: Terms, raw: Raw) -> tuple[Term, float | None]:
        """The limit that the value is compared with, and the margin, positive on the good side."""
        holder = raw if any(key in raw for key in COMPARED) else self.raw
        key = next((key for key in COMPARED if key in holder), None)
        value = terms.values[VALUE]
        if key is None:
            return None, None
        named = holder[key] if key == "between" else [holder[key]]
        ends = [terms.value_of(end) for end in named]
        # A limit that depends on what was not given is no limit in this case.
        if None in ends:
            return None, None
        if key == "between":
            return nearer_end(value, *map(float, ends))
        limit = float(ends[0])
        return limit, difference(limit, value) if key == "at_most" else difference(value, limit)

    def _notes(self, notes: list, terms: Terms) -> Iterator[str]:
        for note in notes:
            raw = note if isinstance(note, Mapping) else {"text": note}
            if terms.holds(raw.get("when", {})):
                yield self._filled(terms, raw["text"])


def _limit_of(raw: Raw, terms: Terms, limits: Mapping[str, float]) -> Term:
    if "by" not in raw:
        return limits[raw["id"]]
    choice = terms.values[raw["by"]]
    # Without the choice there is no row of the table to read.
    return None if choice is None else limits[f"{limit_prefix(choice)}_{raw['id']}"]


def _end_of(raw: Raw) -> object:
    return raw.get("upto", raw.get("below"))


def _operation(figure: Raw) -> tuple[str, list]:
    name = next(name for name in OPERATIONS if name in figure)
    return name, figure[name]


def _names_of_band(raw: Raw) -> set[str]:
    conditions = names_in_conditions(raw.get("when", {}))
    return names_in(_end_of(raw)) | conditions | names_in_text(raw["meaning"])


def _present(bands: list[Raw], terms: Terms) -> Iterator[Raw]:
    """The bands whose conditions hold and whose end is known, up to the first one without end."""
    for raw in bands:
        last = _end_of(raw) is None
        if terms.holds(raw.get("when", {})) and (
            last or terms.calculated(_end_of(raw)) is not None
        ):
            yield raw
            if last:
                return


def _stricter_ends(rows: list[Row]) -> list[Row]:
    """The rows, none of them reaching beyond the end of a worse one that follows it."""
    kept = rows[-1:]
    for band, raw in reversed(rows[:-1]):
        following = kept[0][0]
        # Limits set by a surveyor may cross: then the worse band wins the values that both claim.
        if _is_worse(following, band) and following.upto is not None:
            upto, closed = min(_order(band), _order(following))
            band = replace(band, upto=upto, closed=closed)
        kept.insert(0, (band, raw))
    return kept


def _is_worse(band: Band, than: Band) -> bool:
    ranks = [RATINGS.index(each.rating) for each in (band, than) if each.rating]
    return len(ranks) == 2 and ranks[0] > ranks[1]


def _each_above_the_one_before(rows: list[Row]) -> list[Row]:
    """The rows without those that are empty, since an earlier one reaches as far."""
    kept: list[Row] = []
    for row in rows:
        band = row[0]
        if band.upto is None or not kept or _order(band) > _order(kept[-1][0]):
            kept.append(row)
    return kept


def _order(band: Band) -> tuple[float, bool]:
    return band.upto, band.closed


def _inverted(band: Band, name: str, other: Term, terms: Terms) -> Band:
    """The band with its end brought back from the value to the first input."""
    if band.upto is None:
        return band
    operands = [band.upto, other]
    return replace(band, upto=terms.calculated({INVERSE[name]: operands}))
