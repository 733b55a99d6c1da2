"""Who works, as it is remembered from one recording to the next."""

from dataclasses import replace

from journal.actions import cars, hours
from journal.actions.settings import save_settings
from journal.desktop.desk import Desk


def who_works(desk: Desk) -> str:
    """Who last recorded hours here, else in this journal, else the owner; "" where unknown."""
    if desk.settings.person:
        return desk.settings.person
    latest = max(desk.ask(hours.work) or (), key=lambda work: work.id, default=None)
    if latest is not None:
        return latest.person
    car = desk.ask(cars.car)
    return car.owner if car is not None else ""


def remember_person(desk: Desk, person: str) -> None:
    """Propose this person the next time."""
    if person and desk.settings.person != person:
        desk.settings = replace(desk.settings, person=person)
        save_settings(desk.settings)
