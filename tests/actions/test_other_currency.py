"""The journal put into another currency: sums that were typed stay as they were typed."""

from dataclasses import replace
from datetime import date

from journal.actions import cars, history, people, surveys, valuations, wanted
from journal.actions.session import Session
from journal.domain.findings import Finding, Severity, Survey, Three
from journal.domain.ids import FindingId, PersonId, SurveyId, ValuationId, WantedId
from journal.domain.people import Person
from journal.domain.valuations import Valuation
from journal.domain.wanted import Wanted
from journal.domain.when import When

DAY = When.on(date(2016, 3, 5))


def sums(session: Session) -> list[int | None]:
    """Everything that is in the journal's currency and in no other."""
    (person,) = people.listed_people(session)
    (worth,) = valuations.valuations(session)
    (survey,) = surveys.surveys(session)
    (found,) = surveys.sheet(session, survey.id).findings
    (part,) = wanted.wanted_parts(session)
    three = found.money
    figures = (three.best, three.likely, three.worst, part.price_limit, part.new_price)
    return [person.rate, worth.amount, survey.ceiling, *figures]


def test_what_was_typed_stays_in_a_currency_of_other_places(session: Session) -> None:
    people.save_person(session, Person(PersonId(0), "Iris", rate=1250))
    valuations.record_valuation(session, Valuation(ValuationId(0), DAY, 900_000, "Brandt"))
    made = surveys.start_survey(session, Survey(SurveyId(0), "Walk", DAY, ceiling=50_000)).made
    found = Finding(
        FindingId(0), SurveyId(made or 0), "Hole", Severity.SURFACE, Three(0, 149, 150),
        Three(0, 0, 0),
    )  # fmt: skip
    surveys.add_finding(session, found)
    wanted.add_wanted(session, Wanted(WantedId(0), "Lamp", price_limit=4000, new_price=None))
    euros = sums(session)
    # Minor units by ISO 4217: two decimal places for EUR and GBP, none for JPY, three for KWD.
    cars.change_car(session, replace(cars.car(session), currency="GBP"))
    assert sums(session) == euros
    cars.change_car(session, replace(cars.car(session), currency="KWD"))
    assert sums(session) == [None if one is None else 10 * one for one in euros]
    history.undo(session)
    cars.change_car(session, replace(cars.car(session), currency="JPY"))
    assert sums(session) == [13, 9000, 500, 0, 1, 2, 40, None]
    history.undo(session)
    assert sums(session) == euros
