"""Emergencies: the first line stops play and calls for help; figures of speech are none.

Signs from general first-aid teaching (from memory); the sentences are our own.
"""

from __future__ import annotations

import pytest

from knowledge.advice import CALL_LIMIT
from knowledge.cautions import is_emergency
from knowledge.emergencies import Emergency, emergency_of
from knowledge.situation import Asked, Situation
from knowledge.tactics import advise
from knowledge.vocabulary import Topic

FOR = [
    "low blood sugar, feeling dizzy",
    "my sugar is low and im shaking",
    "diabetic and shaking",
    "glucose 55 and trembling",
    "im having a hypo",
    "hot as hell 96 and 60 percent humid, my head hurts a bit",
    "head hurts, so hot",
    "my head is pounding its boiling",
    "headache in this heat",
    "my head hurts after i got hit",
    "on blood thinners and I just fell",
    "on warfarin, took a fall, hit my hip",
    "fell on my hip and I take a blood thinner",
    "cant see out of my left eye",
    "lost that one, she cant see well tho",
    "mira cant see properly since that ball",
    "he says he can barely see clearly",
    "i can't see very well",
    "from that ball he cant see well",
    "the sun is low, the ball hit me in the eye and i cant see well",
    "he hit it long into tom's eye",
    "the ball went straight in miras eye",
    "he can't see with his right eye",
    "lost vision in one eye",
    "blind in one eye suddenly",
    "he's not breathing",
    "she stopped breathing",
    "he isnt breathing",
    "no pulse",
    "allergic to bees and I got stung",
    "bee sting, lips swelling",
    "stung and my throat feels tight",
    "wasp sting, hives all over",
    "we need an epi pen",
    "choking on a gel",
    "hes down and not moving",
    "having a fit on court",
    "crushing feeling in my chest",
    "one side of my face is numb",
    "skin is hot and dry",
    "tom is staggering and not making sense",
    "she is stumbling around in the heat",
    "talking gibberish after the match",
    "he doesn't sweat any more",
    "peeing dark after the heat",
    "worst headache of my life",
    "ball hit me in the eye",
    "took one in the eye, cant see out of it",
    "lost it in the sun and got hit in the eye",
    "i take blood pressure pills and my chest hurts",
    "her eye is bleeding",
    "seeing stars after that fall",
    "I hit my head on the fence",
    "tom fell on his head",
    "the ball hit my partner in the face",
    "I think she has a concussion",
    "my chest hurts",
    "CHEST PAIN",
    "tightness in my chest",
    "my left arm hurts and feels numb",
    "tingling down the left arm",
    "i can't breathe",
    "I CAN’T BREATHE",
    "trouble breathing here",
    "dizzy",
    "feeling light-headed",
    "mira just fainted",
    "partner passed out",
    "he is vomiting",
    "I threw up after the game",
    "tom seems confused and stopped sweating",
    "is this heat stroke",
    "there is blood on the court",
    "my nose is bleeding",
    "think i broke my wrist",
    "her ankle is broken",
    "heard a pop in my calf",
    "felt something snap",
    "my achilles popped",
    "he collapsed",
    "she is confused and stopped sweating, we switched ends ten minutes ago",
    "nearly fainted on the last point",
    "heart racing and wont stop",
    "bad headache since the fall",
    "i can't walk on it",
    "fell backpedalin on lob, hit head",
    "went back for lob n smacked head on fence",
    "tom bonked his head on the post",
    "slipped, banged head on the court",
    "ran into the fence head first goin for a lob",
    "went face first into the net post",
    "bumped heads w tom going for the middle ball",
    "got clocked in the head by a smash",
    "mira took a drive to the head",
    "took one off the forehead",
    "landed on head",
    "knock to the head just now",
]
AGAINST = [
    "i cant see well with the sun low",
    "the sun was there and i smashed at nobody, where do you aim if you can't see well",
    "the sun is so low that i cant see properly",
    "okafor cant see well without his glasses",
    "we cant see well enough from our side to call it",
    "i cant see clearly if that was out",
    "im so mad i cant see straight",
    "the sun got in tom's eyes on that one",
    "stacking makes my head hurt, lets do regular",
    "my head hurts from who stands where",
    "",
    "we're dying out there",
    "they are killing us",
    "their lobs are killing me",
    "aim for the heart of the court",
    "know the plan by heart",
    "keep your eye on the ball",
    "eyes on the ball",
    "eye contact with my partner before the serve",
    "sun in my eyes on this side",
    "the sun gets me straight in the eye when i look up",
    "i take blood pressure pills, ok in this heat",
    "he drives at my chest",
    "speed up chest high",
    "they lob over my head",
    "ball goes over our heads every time",
    "aim at the head? never",
    "we are bleeding points",
    "where are we bleeding pts",
    "one break left to stop the bleeding",
    "drop it in the middle so they get confused",
    "is the stack worth the confusion",
    "switching sides makes me confused, worth it?",
    "leaned in and nearly fell on my face, was it a bounce ball",
    "okafor pops up backhands",
    "my dinks keep popping up",
    "the ball broke, what now",
    "is that a broken ball",
    "we broke their rhythm",
    "I'm confused about the score",
    "confused who takes the middle",
    "we were confused twice and lost both points, drop the stack",
    "sick of their lobs",
    "throw up a lob when stretched",
    "we got knocked out of the draw",
    "who covers the middle",
    "out of breath, tired legs",
    "my elbow is a bit sore",
    "how do I take pace off the return",
    "we are getting smashed",
    "he hits every ball in the middle",
    "she hits with the arm, slow feet",
    "reset my head after a loss",
    "is it a fault if the ball hits my hand",
    "they keep hitting head high balls",
    "he hits heads up dinks",
    "we bumped heads about the middle",
    "should i hit at his head",
    "they hit it head on",
    "keep ur head still on the drive",
    "we went head first into this match",
    "head to head they win",
    "didnt hit head",
]


@pytest.mark.parametrize("said", FOR)
def test_an_emergency_is_heard_and_answered_first(said: str) -> None:
    assert is_emergency(said)
    asked = Situation(topic=Topic.WEATHER_OR_BODY, asked=Asked(words=said))
    advice = advise(asked)
    assert advice.call.startswith("Stop")
    assert "medical staff" in advice.call or "emergency help" in advice.call
    assert len(advice.call) <= CALL_LIMIT
    assert advice.caution is not None


@pytest.mark.parametrize("said", AGAINST)
def test_a_figure_of_speech_is_no_emergency(said: str) -> None:
    assert not is_emergency(said)


HEADS = {
    "she fell off the bleachers and hit her head, she seems confused": Emergency.KNOCKED,
    "a lady fell down the stairs and now she talks gibberish": Emergency.KNOCKED,
    "partner took a ball to the temple and doesnt remember the score": Emergency.KNOCKED,
    "an old man tripped over the bench, hes confused now": Emergency.KNOCKED,
    "she fell off the bleachers but says shes fine": Emergency.HEAD,
    "she fell, its so hot, confused and no sweat": Emergency.HEAT,
    "he hit his head on the post, not dizzy": Emergency.HEAD,
    "sun hit us on the head all day, im dizzy": Emergency.HEAT,
    "got dizzy and fell": Emergency.HEAT,
}


def test_a_head_that_was_hit_is_not_treated_as_heat() -> None:
    """Nobody whose neck may be hurt is laid with the feet up, or cooled for being confused."""
    assert {said: emergency_of(said) for said in HEADS} == HEADS
    for said, kind in HEADS.items():
        advice = advise(Situation(topic=Topic.WEATHER_OR_BODY, asked=Asked(words=said)))
        told = " ".join(reason.text for reason in advice.reasons)
        assert ("feet up" in told) is (kind is Emergency.HEAT)
        assert ("Head and neck still" in told) is (kind is Emergency.KNOCKED)


def test_prevention_is_for_those_who_ask_about_it() -> None:
    asked = Situation(topic=Topic.WEATHER_OR_BODY, asked=Asked(words="should I wear goggles"))
    assert advise(asked).call.startswith("Wear eye protection")


IN_THE_FACE = (
    "Timo hit the ball in my face",
    "he smashed it right in my face",
    "got hit in the face",
    "tom took one on the nose",
    "ball to the face, what now",
    "his paddle hit my mouth",
    "what if the ball hits my face, i was hit there and my nose bleeds",
)
NOT_IN_THE_FACE = (
    "he got in my face after the point",
    "hit it on the face of the paddle",
    "should i hit it in his face",
    "is it a fault if the ball hits his face",
    "the wind is in my face when i hit on the left",
    "he plays on the right, faces left",
)


def test_a_ball_in_the_face_is_looked_after_and_no_stroke_is_judged() -> None:
    for said in IN_THE_FACE:
        asked = Situation(topic=Topic.WEATHER_OR_BODY, asked=Asked(words=said))
        assert advise(asked).call == "Stop now. Get medical staff: eye and head first.", said
    assert [said for said in NOT_IN_THE_FACE if is_emergency(said)] == []


def test_what_to_do_now_is_asked_of_the_complaint_told_before() -> None:
    for before, call in (("he hit the ball in my face", "eye"), ("my ankle hurts", "Off it")):
        asked = Asked(words="so what must i do now?", before=before)
        assert call in advise(Situation(topic=Topic.WEATHER_OR_BODY, asked=asked)).call
