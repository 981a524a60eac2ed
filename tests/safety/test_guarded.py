"""Which needs are guarded, which are not, and which are asked about."""

from __future__ import annotations

import time

import pytest

from sourcing.safety import Guarded, guarded
from sourcing.safety.duties import DUTIES
from sourcing.safety.model import Duty
from sourcing.safety.words import phrases, stem, words_of
from tests.safety.wordings import DOUBTFUL, GUARDED, INNOCENT

JOB = "repair-job"
A_SECOND = 1.0
A_MEGABYTE = 1_000_000


def judged(*texts: str, duty: str | None = None) -> Guarded | None:
    return guarded(texts, duty)


@pytest.mark.parametrize("what", GUARDED)
def test_a_duty_that_can_hurt_someone_is_guarded(what: str) -> None:
    found = judged(JOB, what)
    assert found is not None
    assert not found.asks


@pytest.mark.parametrize("what", INNOCENT)
def test_an_everyday_job_is_left_alone(what: str) -> None:
    assert judged(JOB, what) is None


@pytest.mark.parametrize("what", DOUBTFUL)
def test_a_doubt_asks_one_question_that_the_need_can_answer(what: str) -> None:
    found = judged(JOB, what)
    assert found is not None
    assert found.asks
    assert found.why.count("?") == 1
    assert found.why.endswith("Write `duty: ordinary` in the need if not, `duty: guarded` if it could.")


@pytest.mark.parametrize(
    ("what", "duty"),
    [
        ("torsion spring of the garage door", "garage door"),
        ("front fork spring of a motorcycle", "vehicle suspension"),
        ("spring of the brake caliper", "brake"),
        ("valve spring of a moped engine", "valve train"),
        ("spring in a lift door", "lift"),
        ("pressure relief valve of a boiler", "pressure relief"),
        ("recoil spring of a pistol", "firearm"),
        ("syringe pump plunger", "medical"),
        ("gate of a carabiner", "fall arrest"),
        ("child seat buckle", "child seat"),
        ("blade guard return", "blade guard"),
        ("chain brake", "chain brake"),
        ("dead-man switch", "dead-man switch"),
        ("microwave door interlock", "door interlock"),
        ("gas valve", "gas valve"),
        ("flame failure device", "flame failure"),
        ("circuit breaker toggle", "circuit breaker"),
        ("recoil starter", "recoil starter"),
        ("wheelchair footrest", "wheelchair"),
        ("stairlift seat", "stairlift"),
        ("pram fold lock", "pram"),
    ],
)
def test_the_duty_is_called_by_its_plain_name(what: str, duty: str) -> None:
    found = judged(JOB, what)
    assert found is not None
    assert found.duty == duty


@pytest.mark.parametrize(
    "what",
    [
        "BRAKE CALIPER",
        "Bräke-Câliper",
        "brake_caliper",
        "brake\u00adcaliper",
        "brake\u2011callipers!",
        "the caliper of the brake",
        "ｂｒａｋｅ",
        "brake-caliper-return",
        "handbrake",
        "hand-brake",
        "hand brakes",
    ],
)
def test_case_accents_hyphens_plurals_and_spelling_do_not_matter(what: str) -> None:
    found = judged(JOB, what)
    assert found is not None
    assert found.duty == "brake"


def test_the_name_of_the_job_alone_can_guard_it() -> None:
    found = judged("brake-lever", "return spring under the lever")
    assert found is not None
    assert found.duty == "brake"


def test_halves_that_stand_in_name_and_sentence_go_together() -> None:
    found = judged("valve-spring", "for the moped engine")
    assert found is not None
    assert not found.asks


@pytest.mark.parametrize(
    ("job", "what"),
    [
        ("pistol-trigger", "trigger spring of a toy pistol"),
        ("brake-lens", "clip of the lens of the brake light"),
        ("trigger-return", "plant mister, the lever comes back"),
        ("brake-return", "bobbin winder of a sewing machine"),
    ],
)
def test_a_name_is_read_in_the_light_of_the_sentence(job: str, what: str) -> None:
    assert judged(job, what) is None


def test_an_innocent_phrase_does_not_hide_a_danger_elsewhere_in_the_need() -> None:
    assert judged(JOB, "The brake light is fine. Return spring of the brake.") is not None
    assert judged(JOB, "a toy box next to the garage door torsion spring") is not None
    assert judged(JOB, "it is not a toy gun but an air rifle") is not None
    assert judged(JOB, "clip of a shelf", "the shelf is under the spring of the brake caliper") is not None


@pytest.mark.parametrize("what", ["there is no brake force any more", "we cannot do without the brake"])
def test_a_denial_of_something_else_denies_no_danger(what: str) -> None:
    assert judged(JOB, what) is not None


def test_once_a_thing_has_been_called_a_toy_its_parts_stay_harmless() -> None:
    assert judged(JOB, "A toy pistol. The pistol's trigger does not come back") is None


def test_a_toy_that_raises_steam_is_no_toy() -> None:
    found = judged(JOB, "safety valve of a toy steam engine")
    assert found is not None
    assert found.duty == "pressure relief"


def test_a_need_marked_guarded_is_guarded_whatever_it_says() -> None:
    found = judged("lid", "hinge of a sewing box", duty="guarded")
    assert found == Guarded(
        "marked guarded in the need",
        "The need is marked `duty: guarded`: if it fails, someone can be hurt.",
        "the maker, or a licensed person of the trade. "
        "Local codes and licensed practice come before anything said here.",
    )


@pytest.mark.parametrize("what", DOUBTFUL)
def test_a_doubt_answered_with_guarded_names_the_likely_duty_and_asks_no_more(what: str) -> None:
    asked, answered = judged(JOB, what), judged(JOB, what, duty="guarded")
    assert asked is not None
    assert answered is not None
    assert answered.duty == asked.duty
    assert not answered.asks


@pytest.mark.parametrize("what", DOUBTFUL)
def test_a_doubt_answered_with_ordinary_is_settled(what: str) -> None:
    assert judged(JOB, what, duty="ordinary") is None


def test_ordinary_never_clears_a_sure_phrase_and_the_reason_says_so() -> None:
    found = judged(JOB, "torsion spring of a garage door", duty="ordinary")
    assert found is not None
    assert not found.asks
    assert "says `duty: ordinary`" in found.why


def test_a_reason_names_the_words_and_what_could_happen() -> None:
    found = judged(JOB, "brake shoe spring")
    assert found is not None
    assert found.why == (
        'The words "brake shoe" point at a guarded duty (brake): if it fails, something that must stop may not, or may '
        "stop too hard, and throw, crush or strike someone."
    )


@pytest.mark.parametrize("duty", DUTIES, ids=lambda duty: duty.name)
def test_every_duty_says_what_could_happen_and_where_to_go(duty: Duty) -> None:
    assert duty.harm
    assert duty.where_to_go
    first_sure = next(phrases(duty.sure))
    found = judged(JOB, " ".join(("spring of a", *first_sure)))
    assert found is not None
    assert "Local codes" in found.where_to_go


def test_the_duties_have_names_of_their_own() -> None:
    names = [duty.name for duty in DUTIES]
    assert len(set(names)) == len(names)


def test_no_phrase_is_both_halves_of_a_pair() -> None:
    for duty in DUTIES:
        for pair in duty.pairs:
            assert not set(phrases(pair.part)) & set(phrases(pair.whole)), duty.name


def test_no_phrase_of_the_table_has_a_word_that_reading_passes_over() -> None:
    """Such a phrase could never be found."""
    for duty in DUTIES:
        halves = [half for pair in duty.pairs for half in (pair.part, pair.whole)]
        for table in (duty.sure, duty.doubtful, duty.harmless, *halves):
            for phrase in phrases(table):
                assert words_of(" ".join(phrase)) == [stem(word) for word in phrase]


@pytest.mark.parametrize("texts", [[], [""], ["", " "], ["\x00\x1b[31m\u202e"], ["brake-light-"], ["...;;;,,,"]])
def test_empty_and_odd_texts_are_innocent(texts: list[str]) -> None:
    assert guarded(texts, None) is None


@pytest.mark.parametrize(
    "piece",
    ["brake light lens ", "toy brake, ", "of the brake ", "valve. car. ", "lift the ", "not ", "a", "\x00", "é\u0301"],
)
def test_a_megabyte_is_judged_within_a_second(piece: str) -> None:
    text = piece * (A_MEGABYTE // len(piece))
    start = time.perf_counter()
    judged(JOB, text)
    assert time.perf_counter() - start < A_SECOND


def test_a_danger_at_the_end_of_a_megabyte_is_seen() -> None:
    found = judged(JOB, "plain words of a long story " * 36_000 + "and the spring of a garage door")
    assert found is not None
    assert found.duty == "garage door"
