"""The forms in which a player may be typed: whole, surname, first name, initials, parts."""

from __future__ import annotations

from collections.abc import Iterator
from enum import IntEnum
from itertools import pairwise

from knowledge.dataclass import dataclass
from knowledge.regex import regex
from scouting_db.heard import as_heard
from scouting_db.sounds import fold

_PARTICLES = frozenset(
    [
        "van",
        "von",
        "der",
        "den",
        "de",
        "di",
        "da",
        "del",
        "della",
        "du",
        "la",
        "le",
        "el",
        "al",
        "ter",
        "ten",
        "af",
        "zu",
    ]
)
_PARTICLES_ALONE = _PARTICLES | {one + other for one in _PARTICLES for other in _PARTICLES}
_NICKNAME = regex(r"[(\"“]([^)\"”]+)[)\"”]")

_CLAN = regex(r"\b(\w)['’](\w)(\w*)")
"""`o'd` of O'Dell: how such a surname is cut short."""

_GROWN_TOGETHER = regex(r"\bvande[nr](\w{4,})")
"""`vandenberg`, which one shortens to `vd berg` as well."""

_LETTERS_OF_A_CLAN = 5
"""Letters after the mark that are a name by themselves: `keeffe` of O'Keeffe, no `dell`."""

_SPELLED_OUT = str.maketrans(
    {"ä": "ae", "ö": "oe", "ü": "ue", "ø": "oe", "å": "aa", "č": "ch", "š": "sh", "ž": "zh"}
)
"""How accented letters are written by who has none: `mueller` for Müller."""


class Strength(IntEnum):
    """How much a form says: WHOLE settles it alone, the others may be shared.

    LATER is the later part of a double surname, which its bearers hardly go by; GIVEN and
    INITIALS may sound like others'.
    """

    WHOLE = 6
    SURNAME = 5
    PART = 4
    LATER = 3
    GIVEN = 2
    INITIALS = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class Form:
    """One way to type a player, folded and without spaces."""

    key: str
    strength: Strength
    heard: bool = False
    """Whether the key is only how another language's name sounds: `voychek` of Wojciech."""


def is_particles(key: str) -> bool:
    """Whether a form is particles alone, such as `vander`: it names somebody only as it stands."""
    return key in _PARTICLES_ALONE


def given_name(name: str) -> str:
    """The folded first name of `Joost van der Meer (Jos)`."""
    return fold(_NICKNAME.sub(" ", name)).partition(" ")[0]


def surname_of(name: str) -> str:
    """`vandermeer` of `Joost van der Meer (Jos)`, "" of who has one name."""
    return fold(_NICKNAME.sub(" ", name)).partition(" ")[2].replace(" ", "")


def forms(name: str, aliases: tuple[str, ...] = ()) -> Iterator[Form]:
    """Every form of a name such as `Joost van der Meer (Jos)`; each key once, the strongest."""
    best: dict[str, Strength] = {}
    spelled = dict.fromkeys((name, name.casefold().translate(_SPELLED_OUT)))
    for key, strength in (form for one in spelled for form in _all_forms(one, aliases)):
        _keep(best, key, strength)
    heard: dict[str, Strength] = {}
    for one in as_heard(_NICKNAME.sub(" ", name)):
        for key, strength in _all_forms(one, ()):
            if strength is not Strength.INITIALS:
                _keep(heard, key, strength)
    yield from (Form(key=key, strength=strength) for key, strength in best.items())
    for key, strength in heard.items():
        if key not in best:
            yield Form(key=key, strength=strength, heard=True)


def spoken_parts(name: str, aliases: tuple[str, ...] = ()) -> Iterator[tuple[str, str]]:
    """Every first name and surname, folded and without spaces, that one may say for a player."""
    plain = _NICKNAME.sub(" ", name)
    nicknames = [fold(one).removeprefix("the ") for one in (*_NICKNAME.findall(name), *aliases)]
    for one in dict.fromkeys((plain, *as_heard(plain))):
        first, _, last = one.strip().partition(" ")
        given, words = fold(first).replace(" ", ""), fold(last).split()
        for called in (given, *(nickname.replace(" ", "") for nickname in nicknames)):
            yield called, "".join(words)
            yield from ((called, word) for word in words[:1] + words[-1:])


def _keep(best: dict[str, Strength], key: str, strength: Strength) -> None:
    squeezed = key.replace(" ", "")
    if squeezed and strength > best.get(squeezed, 0):
        best[squeezed] = strength


def _all_forms(name: str, aliases: tuple[str, ...]) -> Iterator[tuple[str, Strength]]:
    nicknames = [fold(one).removeprefix("the ") for one in (*_NICKNAME.findall(name), *aliases)]
    yield from ((nickname, Strength.WHOLE) for nickname in nicknames)
    plain = _NICKNAME.sub(" ", name)
    full = fold(plain)
    yield full, Strength.WHOLE
    given, _, surname = full.partition(" ")
    if not surname:
        return
    yield given, Strength.GIVEN
    if "-" in plain.split()[0]:  # `jeanluc` of Jean-Luc Perrault
        yield fold(plain.split()[0]), Strength.GIVEN
    yield f"{surname} {given}", Strength.WHOLE
    yield surname, Strength.SURNAME
    yield from (("vd" + core, Strength.PART) for core in _GROWN_TOGETHER.findall(surname))
    yield from _surname_parts(surname)
    yield from _initialed(given, surname)
    yield from _clans(given, plain.casefold())
    for nickname in nicknames:
        yield from _with_nickname(nickname, given, surname)


def _with_nickname(nickname: str, given: str, surname: str) -> Iterator[tuple[str, Strength]]:
    """`bones hale`, `ben bones hale` and `bones h` of Ben Hale (Bones)."""
    yield f"{nickname} {surname}", Strength.WHOLE
    yield f"{surname} {nickname}", Strength.WHOLE
    yield f"{given} {nickname} {surname}", Strength.WHOLE
    yield f"{nickname} {surname[0]}", Strength.INITIALS


def _clans(given: str, plain: str) -> Iterator[tuple[str, Strength]]:
    """`od`, `tod` and `okeeffe` without its letter of Tess O'Dell and Ann O'Keeffe."""
    for letter, first, rest in _CLAN.findall(plain):
        yield letter + first, Strength.INITIALS
        yield given[0] + letter + first, Strength.INITIALS
        core = fold(first + rest)
        if len(core) >= _LETTERS_OF_A_CLAN:
            yield core, Strength.PART


def _surname_parts(surname: str) -> Iterator[tuple[str, Strength]]:
    """`van der`, `meer`, `vd meer` of van der Meer; `ruiz` and, later, `pena` of Ruiz-Peña."""
    words = surname.split()
    particles = [word for word in words if word in _PARTICLES]
    core = [word for word in words if word not in _PARTICLES]
    yield from ((word, Strength.PART if not at else Strength.LATER) for at, word in enumerate(core))
    if particles and core:
        yield " ".join(core), Strength.PART
        yield from ((" ".join(words[at:]), Strength.PART) for at in range(1, len(words)))
        begun = (" ".join(particles[: each + 1]) for each in range(len(particles)))
        yield from ((part, Strength.PART) for part in begun)
        yield "".join(word[0] for word in particles) + "".join(core), Strength.PART


def _initialed(given: str, surname: str) -> Iterator[tuple[str, Strength]]:
    """`ana r`, `ana rp`, `a ruiz`, `ar`, `arp`, `ruiz p`, `n brandt`, `vdm`."""
    words = surname.split()
    letters = "".join(word[0] for word in words)
    core = next((word for word in words if word not in _PARTICLES), words[0])
    for ending in {letters, letters[0], core[0]}:
        yield given + ending, Strength.INITIALS
        yield given[0] + ending, Strength.INITIALS
    yield from ((f"{one}{other[0]}", Strength.INITIALS) for one, other in pairwise(words))
    yield from ((f"{one[0]}{other}", Strength.INITIALS) for one, other in pairwise(words))
    yield "".join(word[0] for word in words), Strength.INITIALS
    if len(words) > 1 and words[0] not in _PARTICLES:  # `jl perrault` of Jean-Luc Perrault
        begun = given[0] + "".join(word[0] for word in words[:-1])
        yield begun + words[-1], Strength.INITIALS
        yield words[-1] + begun, Strength.INITIALS
    for part in {surname, *words} - _PARTICLES:
        yield given[0] + part, Strength.INITIALS
        yield given + part, Strength.PART
