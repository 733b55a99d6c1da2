"""Reading a measure: the numbers of a whole row at once, with the day, moment and instrument."""

from collections.abc import Iterator, Sequence
from decimal import Decimal

from PySide6.QtWidgets import QComboBox, QLineEdit, QWidget

from journal.actions import readings as actions
from journal.desktop.desk import Desk
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.dialogs.metal_fields import NumberField
from journal.desktop.widgets.parts import label, scrolled
from journal.desktop.widgets.when_edit import WhenEdit
from journal.domain.errors import JournalError
from journal.domain.ids import ReadingId
from journal.domain.readings import Measure, Moment, Reading, latest, remark

_TALL = 6


class ReadingDialog(FormDialog):
    """One number for each place of the measure; those left empty aren't read."""

    def __init__(
        self,
        desk: Desk,
        measure: Measure,
        parent: QWidget | None = None,
        *,
        known: Sequence[Reading] = (),
    ) -> None:
        super().__init__(f"Read “{measure.name}”", "&Record", parent)
        self._desk = desk
        self._measure = measure
        self.numbers = [NumberField() for _ in range(measure.places)]
        self.moment = QComboBox()
        self.moment.addItems([moment.value for moment in Moment])
        self.when = WhenEdit()
        self.when.set_today()
        self.instrument = QLineEdit()
        self.instrument.setPlaceholderText("Trammel, feeler gauge, film gauge ...")
        self.note = QLineEdit()
        if measure.target is not None:
            self.form.addRow("", label(_set_by_owner(measure), "muted"))
        self._add_numbers(known)
        self.add_row("&Moment", self.moment)
        self.add_row("&Date", self.when)
        self.add_row("&Instrument", self.instrument)
        self.add_row("N&ote", self.note)
        own = [reading for reading in known if reading.measure_id == measure.id]
        if own:
            self.instrument.setText(own[-1].instrument)
            self.moment.setCurrentText(Moment.AFTER.value)
        self.numbers[0].setFocus()

    def _add_numbers(self, known: Sequence[Reading]) -> None:
        if len(self.numbers) > _TALL:
            self._scroll_numbers(known)
            return
        for name, field in self._named(known):
            self.add_row(name, field)

    def _scroll_numbers(self, known: Sequence[Reading]) -> None:
        from PySide6.QtWidgets import QFormLayout

        holder = QWidget()
        rows = QFormLayout(holder)
        for name, field in self._named(known):
            rows.addRow(name, field)
        area = scrolled(holder, is_form=True)
        area.setMinimumHeight(260)
        self.form.addRow(area)

    def _named(self, known: Sequence[Reading]) -> Iterator[tuple[str, NumberField]]:
        measure = self._measure
        for place, field in enumerate(self.numbers):
            one = f"&Number, {measure.unit}" if measure.places == 1 else f"Place {place + 1}"
            before = latest(measure, known, place)
            if before is not None:
                field.edit.setPlaceholderText(f"last {before.value.normalize():f}")
            field.setAccessibleName(f"{one.replace('&', '')} of {measure.name}")
            field.changed.connect(lambda field=field: self._remark(field))
            yield one, field

    def _remark(self, field: NumberField) -> None:
        try:
            value = Decimal(field.text().replace(",", ".") or "NaN")
        except ArithmeticError:
            return
        if value.is_finite():
            field.say(remark(self._measure, value))

    def submit(self) -> bool:
        """Record the numbers."""
        when = self.when.required()
        values = [field.number() for field in self.numbers]
        if all(value is None for value in values):
            self.numbers[0].setFocus()
            raise JournalError("Write at least one number; what is left empty isn't read.")
        taken = [
            Reading(
                ReadingId(0),
                self._measure.id,
                place,
                value,
                when,
                Moment(self.moment.currentText()),
                self.instrument.text().strip(),
                self.note.text().strip(),
            )
            for place, value in enumerate(values)
            if value is not None
        ]
        self._desk.announce(actions.record_readings(self._desk.session, taken))
        return True


def _set_by_owner(measure: Measure) -> str:
    words = f"You set {measure.target:f} {measure.unit}"
    return f"{words}, give or take {measure.tolerance:f}." if measure.tolerance else f"{words}."
