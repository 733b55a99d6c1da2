"""The lists of people and of days with photos and no hours, and how hours say what they rest on."""

from datetime import datetime

import pytest
from PySide6.QtCore import Qt

from journal.actions import history, hours, people
from journal.desktop.dialogs.hours import HoursDialog
from journal.desktop.dialogs.people import PeopleDialog, PersonDialog
from journal.desktop.dialogs.photo_hours import PhotoHoursDialog
from journal.desktop.pages.gaps import GapsPage
from journal.desktop.pages.ledger_hours import WorkList
from journal.domain.gaps import GapKind
from journal.domain.people import PersonKind
from journal.domain.when import When
from journal.domain.work import WorkBasis
from tests.desktop import workshop
from tests.desktop.desks import desk_over, opened_dialog
from tests.desktop.garage import new_photo

KEY = Qt.Key


@pytest.fixture
def session(tmp_path):
    with workshop.furnished(tmp_path) as made:
        times = ("2016-03-05T14:05", "2016-03-05T15:50", "2016-03-12T09:00", "2016-03-12T10:00")
        new = [
            new_photo(number, When.at(datetime.fromisoformat(time)))
            for number, time in enumerate(times, 1)
        ]
        with made.journal.edit("Add 4 photos"):
            made.journal.photos.add(new)
        yield made


@pytest.fixture
def desk(qapp, session):
    with desk_over(session) as made:
        yield made


def shown(qtbot, dialog):
    qtbot.addWidget(dialog)
    dialog.show()
    return dialog


def cells(tree, row):
    item = tree.topLevelItem(row)
    return [item.text(n) for n in range(tree.columnCount())]


def latest(session):
    return max(hours.work(session), key=lambda work: work.id)


def test_somebody_who_only_worked_is_given_a_rate_by_keys(qtbot, desk, session):
    dialog = shown(qtbot, PeopleDialog(desk))
    assert cells(dialog.list, 0)[:5] == ["Iris", "8 h 30 min", "–", "–", "own"]
    assert not dialog.remove.isEnabled()
    dialog.change.click()
    form = opened_dialog(PersonDialog)
    qtbot.keyClicks(form.rate, "25")
    qtbot.keyClick(form.rate, KEY.Key_Return)
    assert cells(dialog.list, 0)[:4] == ["Iris", "8 h 30 min", "€25.00", "€212.50"]
    dialog.remove.click()
    assert cells(dialog.list, 0)[2] == "–"
    history.undo(session)


def test_a_paid_person_has_no_rate(qtbot, desk, session):
    dialog = shown(qtbot, PeopleDialog(desk))
    dialog.add.click()
    form = opened_dialog(PersonDialog)
    form.accept_button.click()
    assert "needs a name" in form.problem.text()
    form.name.set_text("Bo Lind")
    form.rate.set_amount(900)
    form.kind.setCurrentIndex(1)
    assert not form.rate.isEnabled()
    form.accept_button.click()
    (bo,) = people.listed_people(session)
    assert (bo.name, bo.kind, bo.rate) == ("Bo Lind", PersonKind.PAID, None)


def test_ticked_days_are_recorded_as_lower_bounds(qtbot, desk, session):
    dialog = shown(qtbot, PhotoHoursDialog(desk))
    assert cells(dialog.list, 0) == ["12 March 2016", "1 h", "09:00 to 10:00", "2", ""]
    assert not dialog.accept_button.isEnabled()
    dialog.list.topLevelItem(1).setCheckState(0, Qt.CheckState.Checked)
    assert dialog.total.text() == "1 of 2 days, at least 1 h 45 min"
    dialog.person.set_text("Iris")
    dialog.accept_button.click()
    assert (latest(session).minutes, latest(session).basis) == (105, WorkBasis.PHOTOS)
    assert dialog.list.topLevelItemCount() == 1
    assert dialog.isVisible()
    dialog.list.topLevelItem(0).setCheckState(0, Qt.CheckState.Checked)
    dialog.accept_button.click()
    assert not dialog.isVisible()


def test_the_hours_dialog_offers_what_the_photos_of_its_day_show(qtbot, desk, session):
    dialog = shown(qtbot, HoursDialog(desk))
    assert not dialog.offer.isVisible()
    dialog.when.set_text("2016-03-05")
    assert dialog.offer.isVisible()
    dialog.offer.take.click()
    assert dialog.hours.text() == "1 h 45 min"
    dialog.accept_button.click()
    assert latest(session).basis is WorkBasis.PHOTOS
    assert not dialog.offer.isVisible()
    dialog.when.set_text("2016-03-12")
    dialog.offer.take.click()
    dialog.hours.set_text("2h")
    dialog.accept_button.click()
    # Said by the owner, it is no lower bound.
    assert (latest(session).minutes, latest(session).basis) == (120, WorkBasis.STATED)


def test_the_list_of_hours_says_how_each_is_known_and_a_new_time_is_the_owners_word(
    qtbot, desk, session
):
    photo_dialog = shown(qtbot, PhotoHoursDialog(desk))
    photo_dialog.list.topLevelItem(0).setCheckState(0, Qt.CheckState.Checked)
    photo_dialog.accept_button.click()
    listed = WorkList(desk)
    qtbot.addWidget(listed)
    listed.show_work(hours.work(session), ())
    listed.filter.setText("at least")
    assert listed.table.rows_model.rows() == (latest(session),)
    model = listed.table.model()
    said = [model.index(0, place).data() for place in range(model.columnCount())]
    assert "at least (photos)" in said
    listed.table.selectRow(0)
    listed.table.doubleClicked.emit(listed.table.currentIndex())
    dialog = opened_dialog(HoursDialog)
    assert dialog.basis.text().startswith("At least: first to last shot, 09:00 to 10:00.")
    dialog.hours.set_text("1:30")
    dialog.accept_button.click()
    assert (latest(session).minutes, latest(session).basis) == (90, WorkBasis.STATED)


def test_the_gap_leads_to_the_days(qtbot, desk):
    page = GapsPage(desk)
    qtbot.addWidget(page)
    page.refresh(None)
    model = page.list.gaps_model
    rows = [model.row_at(n) for n in range(model.rowCount())]
    (gap,) = [r for r in rows if getattr(r, "kind", None) is GapKind.PHOTOS_NO_HOURS]
    assert gap.title == "2 days with photos have no hours"
    assert gap.detail == "From first to last shot it makes 2 h 45 min at least."
    page.fill(gap)
    opened_dialog(PhotoHoursDialog).close()
