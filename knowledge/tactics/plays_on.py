"""Whether somebody who is hurt or unwell plays on, and how one leaves a match.

Asked after the complaint, it is answered by that complaint. Common practice, no source, but for
the medical time-out: a player's doubt is answered with sitting out, and staff decide.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from knowledge.advice import Advice, Choice, Reason
from knowledge.cautions import DEFERS, is_emergency
from knowledge.complaints import complains
from knowledge.emergencies import Emergency, emergency_of
from knowledge.regex import regex
from knowledge.sources import COMMON_PRACTICE, rule
from knowledge.tactics import explained_away
from knowledge.tactics.medicated import HIDES, takes_medicine
from knowledge.tactics.weather_entries import BODY, Entry
from knowledge.tactics.weather_finding import find_entry
from knowledge.tactics.weather_said import folded
from knowledge.vocabulary import Topic

_WHO = r"(?:i|we|he|she|they|you|u|him|her|them|me|us|one|partner|player|kid|student)"
_PLAYS_ON = (
    r"(?:(?:play|plays|playing|played|go|goes|going|carry|carries|carrying|push|pushes)"
    r" (?:on|through)"
    r"|(?:keep|keeps|keep on) (?:going|playing)|(?:still|just) play|continu(?:e|es|ing)"
    r"|finish(?:es|ing)?|play again|return|come back|(?:be|go) back (?:in|on))"
)
_STOPS = (
    r"(?:stop(?:s|ping)?(?! (?:them|him|her|it|that)\b)|quit(?:s|ting)?|retir(?:e|es|ing)"
    r"|forfeit(?:s|ing)?|withdraw(?:s|ing)?"
    r"|sit(?:s|ting)? (?:it |this |this one |the rest )?(?:out|down)|rest(?:s|ing)?"
    rf"|(?:pull|take|bring|get|bench) (?:(?!time)\w+ ){{1,3}}(?:out|off)|bench {_WHO}"
    r"|(?:pull|come|drop|step|walk) (?:out|off)|call it (?:a day|off|quits)|call it$|end it"
    r"|be done)"
)
_SAYS_FINE = (
    r"(?:(?:says?|said|feels?|feeling|is|am|im|shes|hes|its|seems?|looks?|claims?|thinks?|swears?)"
    r" (?:\w+ ){0,3}(?:fine|ok|okay|better|alright|all right|good|ready|over|gone|passed)"
    r"|(?:wants?|insists?|begs?|refuses?|wont|dying|desperate)\b"
    r"|(?:stopped|not) hurting|hurts? less|(?:walk|shak|tough|shrug|laugh|run)\w* it (?:off|out))"
)
_SURE = (
    r"(?:(?:you|u) (?:mean|say|saying|sure|certain)|(?:so|is that|thats|that is) (?:a )?(?:yes|no)"
    r"|are (?:you|u) sure|yes or no|for sure|really)"
)
_FINE = regex(
    rf"\b{_SAYS_FINE}\b|^(?:(?:ok|and|but|no|yeah) )*(?:all )?(?:fine|ok|okay|good|better|alright)"
    r" (?:now|again)$"
)
_MATTERS = regex(
    rf"\b(?:{_PLAYS_ON}|{_STOPS}|{_SAYS_FINE}|{_SURE}|(?:can|may|could|should|let) {_WHO} play)\b"
)

_SMALL_WORDS: Final = (
    "1 a about actually after again ahead all allow allowed alright am and another any anymore "
    "anyway are as back bad be because been bench better between both bring but by call "
    "called can cant carries carry carrying cause certain claims clear coach come continue "
    "continues continuing could couple daughter day desperate did do does doing done dont "
    "down drop dying end even every feel feeling feels few fight fine finish finishes "
    "finishing first for forfeit from game games get girl give given go goes going gone good "
    "guy had half hard has have he her here herself hes hey him himself his hm honestly how "
    "hurt hurting hurts husband i idea if ill im in insist insists instead is it its itself "
    "just keep keeps kid laugh leave less let lets like literally little long longer make "
    "match may maybe me mean means might minute minutes more must my myself need needs no "
    "not now of off oh ok okay on one only or our ours out over partner partners passed "
    "pause play played player playing plays please pls point points possible pull pulled "
    "push quit quits quitting ready really refuses rest rested resting retire retires "
    "retiring return right run safe said say saying says second see seems set shake shaking "
    "shaky shall she shes shot should shouldnt shrug sit sits sitting smart so some son soon step "
    "still stop stopped stopping stops student stupid sure swears take taken tell than that "
    "thats the them then they theyre thing think thinks this though through time to today "
    "tomorrow too tough tournament try trying u uh um until us wait walk walking want wants "
    "was way we well what when where whole wife will wise with withdraw without wont worse "
    "would wrong yeah yes yet you your"
)
_REMEDIES: Final = (
    "ate banana breather cold cool cooled cooling drank drink drinking drunk eat eaten "
    "electrolytes ice iced icing lain lay lie lying next salt sat shade shadow sip sipped sips "
    "sitting some stretch stretched stretching taken tape taped took towel water"
)
"""What is done about it meanwhile: "she has drunk, she says it is good now"."""

_SMALL: Final = frozenset([*_SMALL_WORDS.split(), *_REMEDIES.split()])
"""Words that tell nothing but who, whether, going on or not, and what was done about it: any other
is about something."""

_ON_ITS_OWN = regex(
    r"\b(?:can|could|should|may|shall|must|let|is it (?:ok|okay|safe|smart|stupid|wise)"
    r"(?: (?:if|for|to))?)(?: (?:i|he|she|him|her|me|my|the|partner|player|kid|student|just|still"
    r"|now|not|let|somename))+ (?:play(?: or| ok| okay| then)?$"
    r"|play (?:on|again|today|now|this|the|tomorrow|next|still)\b"
    r"|keep playing|stop playing|sit (?:it |this |this one )?(?:out|down)|retire|stop (?:now|here)"
    r"|(?:pull|take|bring|bench) (?:him|her|me|partner|somename|my partner) (?:out|off))"
)
"""What asks of a body though nothing was told of one; of a pair it may be rain or the score."""

_GOES_ON = regex(
    r"\b(?:can|could|should|may|shall|ok|okay|safe|smart|stupid|wise|able)(?: (?:i|we|he|she|they"
    r"|my|the|partner|player|just|still|it|be|if|to|for|her|him|somename))*"
    rf" (?:play\b|{_PLAYS_ON}|{_STOPS})"
)

_HOW_TO_LEAVE = regex(
    r"\b(?:how|what) (?:\w+ ){0,4}(?:retir|forfeit|withdraw|default|quit|pull out)\w*"
    r"|\b(?:retir|forfeit|withdraw|default|pull out)\w* (?:\w+ ){0,4}"
    r"(?:how|what happens|what now)\b"
)

_IF_ONE_LEAVES = regex(
    r"\b(?:if|when|once|say) (?:\w+ ){1,2}(?:(?:has|have) to )?(?:retires?|quits?|withdraws?"
    r"|pulls? out)\b.*\b(?:do|does|did) (?:they|we) (?:win|lose|get)\b"
    r"|\b(?:finish|play|go on|carry on)(?: \w+)? (?:alone|solo|on my own|by myself)\b"
)
"""What becomes of the match then, and whether the other may go on alone."""

_SOMEBODY: Final = "somename"
_MARKS: Final = '.,!:;()"-'
_CLAUSE_ENDS = regex(r"[.,;!?\n]+|\s(?:and|but|so)\s")
_FEWEST_WORDS: Final = 2


def asks_to_play_on(words: str, *, names: frozenset[str], is_hurt: bool) -> bool:
    """Whether it is about nothing but going on or stopping; `names` are folded, of people known.

    With `is_hurt` the last question told of a body, so that less has to be said.
    """
    said = _said(words, names)
    if len(said) < _FEWEST_WORDS or not _is_little(said):
        return False
    line = " ".join(said)
    return (_MATTERS if is_hurt else _ON_ITS_OWN).search(line) is not None


def says_little(words: str, *, names: frozenset[str]) -> bool:
    """Whether the words tell nothing but who, whether, and going on or not, if anything."""
    return _is_little(_said(words, names))


def says_fine(words: str, *, names: frozenset[str]) -> bool:
    """Whether a clause of it tells nothing but that somebody is well again: "ok hes fine, water
    break". For use after a complaint, which such a word takes nothing of."""
    clauses = [_said(clause, names) for clause in clauses_of(words)]
    return any(_is_little(said) and _FINE.search(" ".join(said)) for said in clauses)


def clauses_of(words: str) -> list[str]:
    """The words in parts, at marks and links."""
    return [clause for one in _CLAUSE_ENDS.split(words) if (clause := one.strip())]


def _said(words: str, names: frozenset[str]) -> list[str]:
    said = [_whole(one.strip(_MARKS)) for one in folded(words).replace("?", " ").split()]
    return [_SOMEBODY if _is_name(one, names) else one for one in said if one]


def _whole(word: str) -> str:
    """A word of ours with the g that thumbs leave out: "keep goin"."""
    return f"{word}g" if word.endswith("in") and f"{word}g" in _SMALL else word


def _is_little(said: list[str]) -> bool:
    return all(one in _SMALL or one == _SOMEBODY for one in said)


def goes_on_hurt(words: str) -> bool:
    """Whether a message that tells of a complaint, or of what one takes for it, asks in the same
    breath to play on."""
    return (complains(words) or takes_medicine(words)) and goes_on(words)


def goes_on(words: str) -> bool:
    """Whether it asks to play on or to stop."""
    return _GOES_ON.search(" ".join(_whole(one) for one in folded(words).split())) is not None


def asks_of_leaving(words: str) -> bool:
    """Whether it is asked what becomes of a match that one of the two leaves."""
    said = folded(words)
    return _IF_ONE_LEAVES.search(said) is not None and "retire" in said


def _is_name(word: str, names: frozenset[str]) -> bool:
    return word in names or word.removesuffix("s") in names


def advise(words: str, before: str) -> Advice:
    """The answer by the complaint that the lines `before` tell of, the last one first; what one
    takes for it makes it graver."""
    advice = _by_complaint(words, before)
    if not takes_medicine(words):
        return advice
    return replace(advice, reasons=(HIDES, *advice.reasons[1:]))


def _by_complaint(words: str, before: str) -> Advice:
    told = [line for line in before.splitlines()[::-1] if is_emergency(line) or complains(line)]
    if _HOW_TO_LEAVE.search(folded(words)) or asks_of_leaving(words):
        return _leaving()
    if not told:
        return _answer("Hurt or unwell? Sit out till staff have looked.", _TIRED, DEFERS)
    if is_emergency(told[0]) and explained_away.explains_away(words):
        return explained_away.advise()
    if is_emergency(told[0]):
        is_heat = emergency_of(told[0]) is Emergency.HEAT
        return _answer(_SIT_OUT, _HEAT_BETTER if is_heat else _FEELS_BETTER, DEFERS)
    entry = find_entry(told[0])
    if entry is None or entry.kind != BODY:
        return _answer(_SIT_OUT, _DULL, DEFERS)
    call, unless = _BY_ENTRY.get(entry.id, (_SIT_OUT, _FEELS_BETTER))
    return _answer(call, unless, _caution(entry))


def _caution(entry: Entry) -> str:
    return entry.rule.caution or DEFERS


_SIT_OUT: Final = "Sit out. Play only if medical staff clear it."
_FEELS_BETTER: Final = "Feels better? It is still staff who say so."
_HEAT_BETTER: Final = "Feels better? Dizzy or dry in the heat: done today."
_DULL: Final = "Dull and old, and the swing is as ever? Play on."
_TIRED: Final = "Only tired? Slow it down: deep breaths, no lobs."

_BY_DOCTOR: Final = "Sit out till a doctor or staff agree to it."

_BY_ENTRY: Final = {
    "cramp": (
        "Only when it is loose. It comes back: sit out.",
        "Tight or a sharp pull? Sit out now.",
    ),
    "pain": ("Sharp, new or worse: sit out. Unsure? Sit out.", _DULL),
    "ankle_knee": (
        "Sit out till medical staff have looked at it.",
        "Cleared? Middle balls, no lunges.",
    ),
    "blister": (
        "Yes, once it is clean, dry and covered.",
        "It changes your grip or step? Sit out.",
    ),
    "tired": (
        "Yes, slowly: deep breaths, dinks, no lobs.",
        "Dizzy or chest tight? Sit out, get help.",
    ),
    "illness": (_BY_DOCTOR, "Odd on court? Stop at once."),
    "medicine": (_BY_DOCTOR, "Need a pill to play on? Think of stopping."),
}
"""The call and what changes it, by the complaint; any other sits out."""


def _answer(call: str, unless: str, caution: str) -> Advice:
    return Advice(
        topic=Topic.WEATHER_OR_BODY,
        call=call,
        reasons=(
            Reason(text="In doubt, out: a match lost heals faster", source=COMMON_PRACTICE),
            Reason(text="Medical time-out: up to 15 minutes", source=rule("10.B")),
        ),
        unless=unless,
        caution=caution,
        choices=(Choice(label="the rule", topic=Topic.RULES_QUESTION),),
    )


def _leaving() -> Advice:
    return Advice(
        topic=Topic.WEATHER_OR_BODY,
        call="Tell the referee, or the desk, that you retire.",
        reasons=(
            Reason(text="Hurt? First a medical time-out: up to 15 min", source=rule("10.B")),
            Reason(text="Say it to the other pair too, and stay off", source=COMMON_PRACTICE),
        ),
        unless="How it counts, and later matches: ask the desk.",
        caution=DEFERS,
    )
