"""Answers to rules questions: what holds, from which edition, and what to do now."""

from knowledge.rulebook.answer import UNKNOWN_RULE, advise
from knowledge.rulebook.entry import Rule, Ruling, rule_named, rules
from knowledge.rulebook.finding import Found, find_rule

__all__ = ["UNKNOWN_RULE", "Found", "Rule", "Ruling", "advise", "find_rule", "rule_named", "rules"]
