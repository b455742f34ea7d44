"""How sharing, books and privacy are asked for: commands, and the words of a whole message."""

from __future__ import annotations

from bot.chat.said import BookVerb

SHARING_COMMANDS = {
    "invite": BookVerb.SHARE,
    "join": BookVerb.JOIN,
    "members": BookVerb.MEMBERS,
    "remove": BookVerb.REMOVE_MEMBER,
    "leave": BookVerb.LEAVE,
    "books": BookVerb.BOOKS,
    "bind": BookVerb.BIND,
    "unbind": BookVerb.UNBIND,
    "privacy": BookVerb.PRIVACY,
}

_BOOK = r"(?:(?:my|our|this|the|that) )?(?:book|notebook|notes)"
_PLEASE = r"(?:please |ok |hey |can you |can i |i want to |how do i )*"

SHARING_WORDS = (
    (
        rf"^{_PLEASE}(?:leave|quit|exit) (?:(?:my|our|this|the|that|\w+s) )?(?:book|notebook)()$",
        BookVerb.LEAVE,
    ),
    (
        rf"^{_PLEASE}(?:remove|kick|throw|take) (.+?) (?:from|out of|off) {_BOOK}$",
        BookVerb.REMOVE_MEMBER,
    ),
    (
        rf"^{_PLEASE}(?:show (?:me )?(?:the )?|list (?:the )?)?members(?: of {_BOOK})?()$",
        BookVerb.MEMBERS,
    ),
    (
        rf"^(?:who (?:else )?(?:can (?:see|read|write(?: in)?|use|edit)|sees|reads|uses|has)"
        rf"|who is in with me on) (?:access to )?{_BOOK}()$",
        BookVerb.MEMBERS,
    ),
    (
        rf"^{_PLEASE}(?:my books|which books?(?: (?:is this|am i in|do i have|are we in))?"
        rf"|(?:show|list)(?: me)? (?:all )?my books|(?:switch|change) (?:the |my )?books?)()$",
        BookVerb.BOOKS,
    ),
    (
        rf"^{_PLEASE}(?:switch|change|go back|go) to ((?:\w+ ){{1,4}}book)$",
        BookVerb.BOOKS,
    ),
    (
        rf"^{_PLEASE}(?:(?:use|bind|connect) {_BOOK}(?: (?:here|to this group|in this group))?)()$",
        BookVerb.BIND,
    ),
    (rf"^{_PLEASE}(?:unbind|disconnect) (?:{_BOOK}|this group)()$", BookVerb.UNBIND),
    (
        r"^(?:privacy|is (?:this|my data|it) private|who sees what i (?:write|type|note)"
        r"|what (?:do you|is) (?:store|stored|keep|kept|save|saved)(?: (?:about|of|on) me)?"
        r"|what do you know about me|how do i (?:erase|delete) (?:my data|everything))()$",
        BookVerb.PRIVACY,
    ),
    (
        rf"^{_PLEASE}(?:give|grant) (.+) access(?: to {_BOOK})?$",
        BookVerb.SHARE,
    ),
    (
        rf"^{_PLEASE}(?:forget|erase|delete) (?:all )?(?:of )?(?:me|my data|my account"
        r"|everything (?:about|of|on) (?:me|mine)|all my (?:data|stuff|things))()$",
        BookVerb.FORGET_ME,
    ),
)

MAY_ASK = frozenset({BookVerb.MEMBERS, BookVerb.BOOKS, BookVerb.PRIVACY})
"""What is asked for with a question mark as well."""
