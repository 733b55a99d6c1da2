"""The sentence of each claim, from the record alone: the same record, the same words."""

from collections.abc import Sequence
from dataclasses import dataclass

from journal.domain.areas import DEFAULT_STAGES, Area, StageChange
from journal.domain.metal_words import metres, number, patches_in_words
from journal.domain.patches import Patch, patch_sums
from journal.domain.readings import Compared, Measure, Reading, compare
from journal.domain.seam_sums import sums
from journal.domain.seams import Seam, SeamChange, SeamState, count_welds
from journal.domain.when import When, spoken

_FOUND, _CUT, _LET_IN, _WELDED, _DRESSED, _PROTECTED, _FINISHED = DEFAULT_STAGES

_SAID = {
    _FOUND: "Trouble found",
    _CUT: "Cut back",
    _LET_IN: "New metal let in",
    _WELDED: "Welded",
    _DRESSED: "Dressed",
    _PROTECTED: "Protected",
    _FINISHED: "Finished",
}

#: So many measures are named in a sentence; of more it says how many.
_MOST_MEASURES = 4

#: What a sentence of the owner's may be long before it is cut in a claim, in characters.
_ROOM = 280


@dataclass(frozen=True, slots=True)
class Told:
    """What a claim's sentence is made of: the repair area, the stage, its dates, its metal."""

    area: Area
    key: str
    changes: Sequence[StageChange]
    patches: Sequence[Patch]
    seams: Sequence[Seam]
    seam_changes: Sequence[SeamChange]
    stages: Sequence[str]


def sentence_of(
    told: Told, measures: Sequence[Measure], readings: Sequence[Reading]
) -> tuple[str, When | None]:
    """A claim in words, and the date that it states."""
    if told.key == "measured":
        return _measured(measures, readings), None
    when = told.changes[0].when if told.changes else _date_of_metal(told)
    is_first = bool(told.stages) and told.key == told.stages[0]
    head = _SAID[_FOUND] if is_first else _SAID.get(told.key, f"Brought to “{told.key}”")
    dates = [spoken(change.when) for change in told.changes]
    if not dates and when is not None:
        dates = [spoken(when)]
    again = f", and again {' and '.join(dates[1:])}" if dates[1:] else ""
    dated = f"{head}, {dates[0]}{again}" if dates else f"{head}, at no recorded date"
    more = "; ".join(part for part in _more(told) if part)
    return (f"{dated}: {_end(more)}" if more else f"{dated}."), when


def _more(told: Told) -> list[str]:
    notes = [_start(change.note) for change in told.changes if change.note.strip()]
    if told.stages and told.key == told.stages[0]:
        return [_start(told.area.found), *notes]
    if told.key == _LET_IN and told.patches:
        return [*_let_in(told.patches), *notes]
    if told.key == _WELDED and told.seams:
        return [_welded(told, SeamState.WELDED), *notes]
    if told.key == _DRESSED and told.seams:
        return [_welded(told, SeamState.DRESSED), *notes]
    return notes


def _let_in(patches: Sequence[Patch]) -> list[str]:
    """The new metal, that without a day told apart: it may not be in yet."""
    dated = [patch for patch in patches if patch.when]
    undated = [patch for patch in patches if not patch.when]
    said = [patches_in_words(patch_sums(dated))] if dated else []
    if undated:
        said.append(f"drawn with no day of its own, {patches_in_words(patch_sums(undated))}")
    return said


def _welded(told: Told, state: SeamState) -> str:
    whole = sums(told.seams, told.seam_changes)
    done = whole.at_least(state)
    if not done and state is SeamState.WELDED:
        return f"of {metres(whole.planned)} of seam drawn, none is recorded as welded"
    if not done:
        return ""
    parts = [f"{metres(done)} of {metres(whole.planned)} of seam"]
    rows = [seam for seam in told.seams if seam.joint.is_row]
    if rows and state is SeamState.WELDED:
        made = sum(count_welds(s, _own(s, told.seam_changes), None, state) for s in rows)
        parts.append(f"{made} of {sum(count_welds(seam) for seam in rows)} plug and spot welds")
    return ", ".join(parts)


def _own(seam: Seam, changes: Sequence[SeamChange]) -> list[SeamChange]:
    return [change for change in changes if change.seam_id == seam.id]


def _date_of_metal(told: Told) -> When | None:
    """The earliest date that patches or seams themselves have, where no stage says one."""
    if told.key == _LET_IN:
        return min((patch.when for patch in told.patches if patch.when), default=None)
    if told.key == _WELDED:
        state = SeamState.WELDED
        return min((c.when for c in told.seam_changes if c.state.rank >= state.rank), default=None)
    return None


def _measured(measures: Sequence[Measure], readings: Sequence[Reading]) -> str:
    rows = [(m, found) for m in measures for found in compare(m, readings)]
    told = [_in_words(m, found) for m, found in rows if found.before and found.after]
    single = [m.name for m, found in rows if bool(found.before) != bool(found.after)]
    if told:
        more = f"; {len(told) - _MOST_MEASURES:,} more" if len(told) > _MOST_MEASURES else ""
        return f"Measured before and after: {'; '.join(told[:_MOST_MEASURES])}{more}."
    names = list(dict.fromkeys(single or [m.name for m in measures]))
    return f"Measured: {', '.join(names[:_MOST_MEASURES])}."


def _in_words(measure: Measure, found: Compared) -> str:
    assert found.before is not None
    assert found.after is not None
    place = "" if measure.places == 1 else f", place {found.point + 1}"
    before, after = number(found.before.value), number(found.after.value)
    return f"{measure.name}{place}, {before} then {after} {measure.unit}"


def _start(text: str) -> str:
    """The owner's words in the middle of a sentence, on one line, no longer than there is room."""
    line = " ".join(text.split())
    if len(line) > _ROOM:
        cut = line.rfind(" ", _ROOM // 2, _ROOM)
        line = line[: cut if cut > 0 else _ROOM].rstrip() + " …"
    return line.rstrip(".")


def _end(text: str) -> str:
    return text if text[-1] in "!?…" else text + "."
