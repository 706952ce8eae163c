"""The sentence that a client reads beside the word of a unit."""

from inspector.assess.verdict.found_words import bad_words, few_of, open_names
from inspector.assess.verdict.unit_case import Case
from inspector.assess.verdict.unit_rules import DECIDES, Word

# By the rule that gave the word.
_SENTENCES = {
    "not wanted": "Nothing in the brief wants it{works}.",
    "not looked at": "Nobody has looked at it.",
    "beyond repair": "Beyond repair: {why}.",
    "law, too dear": "The law is against it, and bringing it within the law is too dear.",
    "law, way back priced": "The law is against it as it is; the way back is priced.",
    "law, no parts": "The law is against it, and there are no parts: a new one.",
    "law, not priced": "The law is against it as it is: price the way back and a new one.",
    "not worth repair": "{worst}; nobody repairs what the brief does not need.",
    "too dear": "{worst}; too dear to mend.",
    "worth repair": "{worst}; the repair is priced and worth it.",
    "not priced": "{worst}; price the repair and a new one.",
    "work certain": "{worst}; needs work at least{price}.",
    "not worth an overhaul": "{worst}; an overhaul is too dear against a new one.",
    "worn": "{worn}.",
    "short-lived": "Works, but has {life}{jobs}.",
    "no parts": "Works, but has no parts for the buyer's horizon{jobs}.",
    "sound": "Seen and sound{jobs}.",
    "too dear so far": "{worst}; as priced, a new one is the better way{open}.",
    "work so far": "{worst}{open}.",
    "sound so far": "{sound}{open}{jobs}.",
}
# Of what cannot be taken out of the ship: what is found there is said of buying her.
_OF_THE_SHIP = {
    "beyond repair": "Beyond repair: {why}. It decides whether she is worth buying.",
    "law, too dear": "The law is against it, and bringing it within the law is dear: it decides "
    "whether she is worth buying.",
    "law, no parts": "The law is against it: what that takes decides whether she is worth buying.",
    "law, not priced": "The law is against it as it is: price the way back, which decides whether "
    "she is worth buying.",
    "not priced": "{worst}; price the work, which decides whether she is worth buying.",
}
_DEAR_SHIP = "{worst}; dear to put right, which decides whether she is worth buying{open}."


def sentence_of(case: Case, word: Word) -> str:
    """Return the sentence that a client reads beside the word.

    Parameters
    ----------
    case : Case
    word : Word

    Returns
    -------
    str
    """
    evidence, bad = case.evidence, case.evidence.bad
    still_open = open_names(evidence)
    jobs = few_of([result.check.title for result in bad])
    return _template(word).format(
        works=", though it works" if evidence.enough and not bad else "",
        why=case.facts.beyond_repair,
        worst=bad_words(bad[0]) if bad else _hint(case),
        worn=f"Worn: {bad_words(bad[0])}" if bad else _hint(case),
        life=_life(case),
        jobs=f"; to put right: {jobs}" if bad else "",
        price=_missing_price(case),
        sound=_as_far_as_seen(case),
        open=f"; open: {few_of(still_open)}" if still_open else "",
    )


def _template(word: Word) -> str:
    rule = word.rule.name
    if word.detail == DECIDES:
        return _OF_THE_SHIP.get(rule, _DEAR_SHIP)
    return _SENTENCES[rule]


def _as_far_as_seen(case: Case) -> str:
    evidence = case.evidence
    if evidence.by_word_only:
        return "Sound by word and paper"
    if not evidence.condition.seen and evidence.walked_past:
        return "Walked past, nothing seen against it"
    return "Sound as far as seen"


def _hint(case: Case) -> str:
    """What speaks for work where nothing is poor or failed."""
    if case.short_lived:
        return f"It has {_life(case)}"
    if case.parts_run_out:
        return "No parts for the buyer's horizon"
    if case.work_is_certain or case.evidence.enough:
        return "Much of it is only fair"
    if case.looks_worn:
        return "Worn as far as seen"
    return "Something was seen against it in passing"


def _life(case: Case) -> str:
    """The years that it has left, against those that are wanted; only where both are known."""
    if not case.short_lived:
        return ""
    return f"about {case.facts.life_years:.3g} years left, of {case.horizon:.3g} wanted"


def _missing_price(case: Case) -> str:
    """Which price is still missing where work is certain."""
    facts = case.facts
    if facts.refurbish_cost is None and (facts.replace_cost is None or facts.stays):
        return ", not priced yet"
    if facts.refurbish_cost is None:
        return "; mending it is not priced yet"
    return "" if facts.stays else "; a new one is not priced yet"
