"""Erasing for good, after one more tap: a player with what was noted of them, or oneself."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.answers.desk import Desk
from bot.chat.answers.names import ask_which, settled
from bot.chat.answers.notes_naming import names_player
from bot.chat.context import Context
from bot.chat.payload import BadPayloadError, Verb, number_in, tap
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.said import BookSaid
from bot.chat.shown_list import FORGET, Listing
from bot.chat.wording import wording
from knowledge.dataclass import dataclass
from knowledge.vocabulary import TRAITS, PlayerId
from scouting_db.values import BookId, MemberRow, Membership, NoteId, NoteRow, Role

PLAYER, ME = "player", "me"


@dataclass(frozen=True, slots=True, kw_only=True)
class _Share:
    """What becomes of a book of somebody who is forgotten; `heir` gets to edit it."""

    book: BookId
    name: str
    is_erased: bool
    heir: MemberRow | None = None


def forget(desk: Desk, said: BookSaid) -> Reply:
    """ "Forget okafor": how much would go, and the button that does it."""
    if not [one for one in said.mentions if not one.pronoun]:
        return Reply(text=wording("forget.whom"))
    players = settled(said.mentions)
    if players is None:
        return ask_which(desk, said.text, said.mentions)
    if not players:
        return Reply(text=wording("forget.whom"))
    player = players[0]
    name = desk.view.name_of(player)
    text = wording("forget.sure").format(name=name, notes=_notes(len(_notes_about(desk, player))))
    button = Button(label=wording("forget.player"), payload=tap(Verb.FORGET, PLAYER, player))
    desk.context = replace(desk.context, listing=Listing(what=FORGET, of=player))
    return Reply(text=text.strip(), buttons=rows([button]))


def forget_me(desk: Desk) -> Reply:
    """What would go and what would stay, and the button that does it."""
    if desk.chat.is_group:
        return Reply(text=wording("forget.in_private"))
    lines = [wording("forget.me_sure")]
    for share in _shares(desk):
        key = "forget.erased" if share.is_erased else "forget.stays"
        lines.append(wording(key).format(book=share.name))
        if share.heir is not None:
            lines.append(wording("forget.heir").format(name=share.heir.name))
    lines.append(wording("forget.no_undo"))
    button = Button(label=wording("forget.me"), payload=tap(Verb.FORGET, ME))
    return Reply(text="\n".join(lines), buttons=rows([button]))


def press_forget(desk: Desk, args: tuple[str, ...]) -> Reply:
    """The button; who may erase is looked up again."""
    match args:
        case ("player", number):
            return _forget_player(desk, PlayerId(number_in(number)))
        case ("me",):
            return _forget_me(desk)
        case _:
            raise BadPayloadError(f"nothing to forget: {args}")


def _forget_player(desk: Desk, player: PlayerId) -> Reply:
    if desk.role is not Role.EDITOR:
        return Reply(text=wording("share.editors_only"))
    if desk.view.player(player) is None:
        return Reply(text=wording("unclear.too_old"))
    name = desk.view.name_of(player)
    about = _notes_about(desk, player)
    for note in about:
        _take_out_of(desk, note, player)
    for (match, n), text in desk.book.all_rally_words().items():
        if names_player(desk, text, player):
            desk.book.erase_rally_words(match, n)
    desk.book.forget_player(player)
    desk.directory.blank_posts_of(desk.book_id)
    _forget_in_chats(desk, player)
    desk.changed()
    return Reply(text=wording("forget.done").format(name=name, notes=_notes(len(about))))


def _notes(count: int) -> str:
    return f"{count or 'no'} note{'' if count == 1 else 's'}"


def _notes_about(desk: Desk, player: PlayerId) -> list[NoteId]:
    """Notes with a claim about the player, and notes whose words name them."""
    return [
        note
        for note, text in desk.book.all_words().items()
        if _claims(desk, note, player) or names_player(desk, text, player)
    ]


def _claims(desk: Desk, note: NoteId, player: PlayerId) -> bool:
    row = desk.book.note(note)
    return row is not None and any(one.player == player for one in row.observations)


def _take_out_of(desk: Desk, note: NoteId, player: PlayerId) -> None:
    """The note goes, unless it says something of others: then it says only that."""
    row = desk.book.note(note)
    others = [one for one in row.observations if one.player != player] if row else []
    if row is None or not others or row.deleted:
        desk.book.erase_note(note)
    else:
        desk.book.reword_note(note, _plain_words(desk, row, player))


def _plain_words(desk: Desk, row: NoteRow, player: PlayerId) -> str:
    """What the note says of the others, without the words that it was said in."""
    told = [
        f"{desk.view.short_name(one.player)}: {TRAITS[one.trait].label} "
        f"{'not ' if one.denied else ''}{one.value}"
        for one in row.observations
        if one.player != player
    ]
    return "; ".join(told)


def _forget_in_chats(desk: Desk, player: PlayerId) -> None:
    """No chat of the book remembers words or buttons that may name the player."""
    for chat, stored in desk.directory.contexts_of(desk.book_id).items():
        desk.directory.save_context(chat, _without(Context.from_json(stored), player).to_json())
    desk.context = _without(desk.context, player)


def _without(context: Context, player: PlayerId) -> Context:
    return replace(
        context,
        ours=() if player in context.ours else context.ours,
        theirs=tuple(one for one in context.theirs if one != player),
        focus=tuple(one for one in context.focus if one != player),
        asker=None if context.asker == player else context.asker,
        called=tuple(each for each in context.called if each[0] != player),
        sides=tuple((one, side) for one, side in context.sides if one != player),
        asked=None,
        told=None,
        pendings=(),
        change=None,
        tagged=None,
    )


def _shares(desk: Desk) -> list[_Share]:
    return [_share(desk, one) for one in desk.directory.memberships(desk.writer)]


def _share(desk: Desk, one: Membership) -> _Share:
    others = [each for each in desk.directory.members(one.book) if each.person != desk.writer]
    if not others:
        return _Share(book=one.book, name=one.name, is_erased=True)
    editors = [each for each in others if each.role is Role.EDITOR]
    heir = None if editors else others[0]
    return _Share(book=one.book, name=one.name, is_erased=False, heir=heir)


def _forget_me(desk: Desk) -> Reply:
    """Books of mine alone go, of shared ones only my name; the reply is all that is left to do."""
    if desk.chat.is_group:
        return Reply(text=wording("forget.in_private"))
    directory, person = desk.directory, desk.writer
    for share in _shares(desk):
        if share.is_erased:
            directory.erase_book(share.book)
            continue
        if share.heir is not None:
            directory.add_member(share.book, share.heir.person, Role.EDITOR)
        directory.remove_member(share.book, person)
    directory.erase_chat(desk.chat)
    directory.erase_person(person)
    directory.blank_row(desk.inbox)
    desk.is_gone = True
    return Reply(text=wording("forget.me_done").strip())
