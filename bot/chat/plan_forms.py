"""The forms in which something of a plan is asked for, over words in which N stands for names."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.said import PlanAsk

PLAN = r"(?:game ?)?(?:plans?|paln|pln|plna|plam|gameplan)"
THE = r"(?:(?:the|our|my|that|this|a|an|any) )?"
OLD = r"(?:last|old|earlier|previous|stored|saved|same)"
ON = r"(?:for|vs|v|versus|against|on|with|about|of)"
AGAINST = rf"(?: {ON} (?:N|them|these (?:two|guys)))?"
POLITE = r"(?:(?:please|pls|plz|ok|okay|hey|so|and|(?:can|could|cn) (?:you|u)|can we|quick) )*"
END = r"(?: (?:please|pls|plz|thanks|now|again))*"
SHOW = (
    r"(?:(?:show|give|get|tell|remind|read|pull up|bring up|find|recall|see|repeat)"
    r"(?: me| us)?(?: (?:of|about))? )"
)
WAS = r"(?:(?:what|wat|wht|whats|which)(?: (?:is|was|were))? )"
THEN = (
    r"(?:(?:from |as )?last (?:time|match|week|game|meeting)|from before|back then"
    r"|yesterday|(?:from |on )?(?:mon|tues|wednes|thurs|fri|satur|sun)day|before)"
)
STUDENT = r"(?:(?:a|the|my|our|one of my|some) )?(?:students?|pupils?|learners?|class|clinic)"
SEND = r"(?:send|snd|sned|forward|fwd|share|text|message|msg|pass|copy|give|write|mail|email)"
SEND_ON = rf"(?!give\b|write\b){SEND}"
"""Without somebody to give it to, "give the plan" asks for the plan itself."""

HIM = r"(?:N|him|her|them|my (?:partner|mate|friend)|partner|the partner)"

FORMS: Sequence[tuple[PlanAsk, str]] = (
    (
        PlanAsk.STUDENT,
        rf"{POLITE}(?:{SEND} )?(?:me )?{THE}{PLAN}{AGAINST} (?:to|with|for) {STUDENT}"
        rf"{AGAINST}(?: without (?:the |our )?notes(?: on \w+)?)?",
    ),
    (PlanAsk.STUDENT, rf"{POLITE}{SEND} {STUDENT} {THE}{PLAN}{AGAINST}"),
    (PlanAsk.STUDENT, rf"{POLITE}(?:the |a )?student (?:version|copy) of {THE}{PLAN}{AGAINST}"),
    (PlanAsk.STUDENT, rf"{POLITE}(?:the |a )?student {PLAN}{AGAINST}"),
    (
        PlanAsk.STUDENT,
        rf"{POLITE}(?:{SEND} )?{THE}{PLAN}{AGAINST} without (?:the |our |any )?notes?"
        r"(?: on (?:people|them|players|anyone|anybody))?",
    ),
    (PlanAsk.SHARE, rf"{POLITE}{SEND_ON} {THE}{PLAN}{AGAINST}"),
    (PlanAsk.SHARE, rf"{POLITE}{SEND} {THE}{PLAN}{AGAINST} (?:to|with|for) {HIM}{AGAINST}"),
    (PlanAsk.SHARE, rf"{POLITE}{SEND} {HIM} {THE}{PLAN}{AGAINST}"),
    (
        PlanAsk.SHARE,
        rf"{POLITE}(?:copy of )?{THE}{PLAN}{AGAINST} (?:as|in) (?:a |one )?(?:message|text|msg)"
        rf"(?: (?:to|for) {HIM})?",
    ),
    (PlanAsk.SHARE, rf"{POLITE}(?:a )?copy of {THE}{PLAN}{AGAINST}(?: (?:to|for) {HIM})?"),
    (
        PlanAsk.PLAN_B,
        rf"{POLITE}(?:{WAS}|{SHOW})?{THE}(?:plan ?b|planb|(?:backup|back up|second|other"
        rf"|fallback) {PLAN}){AGAINST}",
    ),
    (
        PlanAsk.PLAN_B,
        r"(?:ok |and |so |but )*(?:(?:what|wat|wht|waht) )?"
        r"(?:if|when) (?:they|N) (?:change|changes|adjust|adjusts"
        r"|adapt|adapts|catch on|switch it up|(?:figure|work) (?:it|us|that|this) out)"
        r"(?: (?:it|things|something|then|what then|what now|what|then what|what do we do))?",
    ),
    (PlanAsk.PLAN_B, rf"(?:and )?when (?:do|should) we (?:switch|change) (?:{THE})?{PLAN}"),
    (
        PlanAsk.AGAIN,
        rf"{POLITE}(?:{WAS}|{SHOW})?{THE}{OLD} {PLAN}{AGAINST}(?: (?:{THEN}|as {THEN}))?",
    ),
    (PlanAsk.AGAIN, rf"{POLITE}(?:{WAS}|{SHOW})?{THE}{PLAN}{AGAINST} again"),
    (
        PlanAsk.AGAIN,
        rf"{POLITE}(?:remind|recall)(?: me| us)?(?: of| about)? {THE}{PLAN}{AGAINST}",
    ),
    (PlanAsk.AGAIN, rf"{POLITE}(?:{WAS}|{SHOW})?{THE}{PLAN}{AGAINST} {THEN}{AGAINST}"),
    (
        PlanAsk.AGAIN,
        rf"{POLITE}(?:{WAS}|{SHOW})?{THE}{PLAN} (?:that )?we (?:had|made|used|did|played)"
        rf"{AGAINST}(?: {THEN})?",
    ),
    (
        PlanAsk.AGAIN,
        rf"{POLITE}what did we (?:plan|agree to do|do|try)"
        rf"(?: {THEN})?{AGAINST}(?: {THEN})?",
    ),
    (PlanAsk.PLAN_B, rf"{POLITE}(?:{WAS}|{SHOW})?{THE}(?:backup|back up|fallback)"),
    (PlanAsk.AGAIN, rf"{POLITE}(?:what|wat|wht) was {THE}{PLAN}{AGAINST}"),
    (
        PlanAsk.SINCE,
        rf"{POLITE}(?:what|wat|whats|anything|any) (?:has |is |s )?(?:changed|new|different|news)"
        rf"{AGAINST} since (?:then|last \w+|(?:we )?(?:last )?(?:played?|playd|met|faced)(?: \w+)?"
        rf"|(?:we )?last (?:played?|playd|met|faced)(?: (?:N|them))?|(?:mon|tues|wednes|thurs|fri"
        rf"|satur|sun)day|yesterday){AGAINST}",
    ),
    (
        PlanAsk.SINCE,
        rf"{POLITE}(?:(?:what|whats|anything|any|is there anything) (?:is |s )?)?"
        r"(?:new|news|changed)(?: (?:stuff|things?|notes?))?"
        r"(?: (?:on|about|with|of|for)) (?:N|them|these two|these guys)"
        r"(?: since (?:then|last \w+|\w+day))?",
    ),
    (
        PlanAsk.SINCE,
        r"(?:(?:its a |the )?rematch(?: (?:with|vs|against) (?:N|them))?(?: so)? )?"
        r"what (?:will|would|do|might) (?:they|N) (?:probably )?(?:change|try|do different(?:ly)?)"
        r"(?: (?:this time|next time|in the rematch|now))?",
    ),
    (
        PlanAsk.SINCE,
        rf"{POLITE}(?:any )?(?:updates?|whats different|what is different|what (?:has )?changed"
        r"|whats changed)(?: (?:on|about|with|for))? N(?: now| lately)?",
    ),
    (
        PlanAsk.SINCE,
        rf"{POLITE}(?:how )?(?:have|has|did) (?:N|they) changed?(?: since (?:last )?\w+)?",
    ),
    (
        PlanAsk.SINCE,
        rf"{POLITE}(?:what have we (?:learned|learnt|seen)|(?:what|whats|anything) (?:is )?"
        rf"(?:new|changed|different)){AGAINST}"
        r" since (?:last \w+|then|\w+day|we (?:last )?\w+ \w+)",
    ),
    (
        PlanAsk.SINCE,
        rf"since (?:last \w+|then|\w+day|we (?:last )?\w+ \w+) (?:what|whats|anything)"
        rf"(?: is| has)? (?:new|changed|different){AGAINST}",
    ),
    (
        PlanAsk.SINCE,
        r"(?:will|would|do) (?:they|N) (?:probably )?change (?:something|anything|things|it)"
        r"(?: up)?(?: (?:this time|next time|in the rematch))?",
    ),
    (PlanAsk.SINCE, r"(?:its a |the )?rematch(?: (?:with|vs|against) (?:N|them))?"),
)
