"""Where the headings stand, what each column probably is, and what has to be asked first."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from datetime import timedelta
from decimal import Decimal
from itertools import pairwise

from journal.domain.errors import JournalError
from journal.domain.hours import parse_hours
from journal.domain.money import minor_units
from journal.domain.sheet_rows import (
    AMOUNTS,
    MONEY,
    Cell,
    Choices,
    DayOrder,
    Decimals,
    Grid,
    Known,
    Proposal,
    Question,
    Role,
    letter,
    shown,
)
from journal.intake.sheets import words
from journal.intake.sheets.days import looks_like_day, orders_of
from journal.intake.sheets.sums import Mark, written

#: Titles above the headings take no more rows than this.
_TITLE_ROWS = 40
#: So many rows tell what a column is.
_SAMPLED = 300
#: What share of a column's filled cells must look the part.
_MOST = 0.6
#: The same under a heading that names it outright.
_LEAST = 0.3


def heading_row(grid: Grid) -> int:
    """The row number of the headings, 0 where there are none: the row that names most columns."""
    best, best_score = 0, 0.0
    for place, row in enumerate(grid.rows[:_TITLE_ROWS]):
        score = _heading_score(row)
        below = grid.rows[place + 1 : place + 6]
        if score > best_score and (score >= 2 or any(_has_values(one) for one in below)):
            best, best_score = place + 1, score
    return best


def _heading_score(row: Sequence[Cell]) -> float:
    """How many columns a row names, less than nothing where it holds values."""
    if _has_values(row):
        return 0.0
    texts = [cell for cell in row if isinstance(cell, str)]
    known = {role for text in texts for role in Role if words.heading_score(text, role) >= 30}
    named = len(known) if len(texts) > 1 else 0
    return named + 0.1 * len(texts) if named else 0.1 * (len(texts) if len(texts) > 2 else 0)


def _has_values(row: Sequence[Cell]) -> bool:
    return any(
        (cell is not None and not isinstance(cell, str))
        or (isinstance(cell, str) and (_is_number(cell) or looks_like_day(cell)))
        for cell in row
    )


def _is_number(cell: Cell) -> bool:
    if isinstance(cell, bool):
        return False
    if isinstance(cell, Decimal):
        return True
    found = written(cell) if isinstance(cell, str) else None
    return found is not None and len(found.words) <= 4


def propose(grid: Grid, known: Known, heading: int | None = None) -> Proposal:
    """How a sheet is probably to be read; ``heading`` is the row that the person says, if any."""
    row = heading_row(grid) if heading is None else heading
    names = _names(grid, row)
    samples = _samples(grid, row)
    roles = _roles(names, samples, known)
    choices = Choices(
        row,
        roles,
        is_bank=_is_bank(names, roles, samples),
        currency=_currency(names, known.currency),
        person=known.person,
        fill_down=_has_gaps(grid, row, roles),
    )
    return asked(grid, choices)


def asked(grid: Grid, choices: Choices) -> Proposal:
    """The same choices with what the sheet itself settles, and what has to be asked.

    What the person has said already is kept.
    """
    rows = grid.rows[choices.heading :]
    dates = decimals = None
    if choices.dates is None:
        found, examples = orders_of(_cells(rows, choices.columns(Role.DATE)))
        if len(found) == 1:
            choices = replace(choices, dates=next(iter(found)))
        elif examples:
            dates = Question(examples)
        else:
            choices = replace(choices, dates=DayOrder.DMY)
    if choices.decimals is None:
        mark, examples = _decimals(rows, choices)
        choices = replace(choices, decimals=mark)
        decimals = Question(examples) if mark is None else None
    return Proposal(choices, _names(grid, choices.heading), dates, decimals)


def _decimals(
    rows: Sequence[tuple[Cell, ...]], choices: Choices
) -> tuple[Decimals | None, tuple[str, ...]]:
    """The mark that all sums written as text can have, None with examples where that is open."""
    money = [place for role in MONEY for place in choices.columns(role)]
    seen: dict[Mark, list[str]] = {mark: [] for mark in Mark}
    for cell in _cells(rows, money):
        found = written(cell) if isinstance(cell, str) else None
        if found is not None:
            seen[found.mark].append(str(cell).strip())
    points, commas, either = seen[Mark.POINT], seen[Mark.COMMA], seen[Mark.OPEN]
    if points and commas:
        return None, (commas[0], points[0], *either[:1])
    if points or commas:
        return (Decimals.POINT if points else Decimals.COMMA), ()
    if either and _has_places(choices.currency):
        return None, tuple(dict.fromkeys(either))[:3]
    # Without decimals a mark can only part thousands, and either reading gives the same.
    return (Decimals.BOTH if not either else _grouped_by(either[0])), ()


def _grouped_by(example: str) -> Decimals:
    return Decimals.COMMA if "." in example else Decimals.POINT


def _has_places(currency: str) -> bool:
    try:
        return minor_units(currency) > 0
    except JournalError:
        return True


def _cells(rows: Iterable[Sequence[Cell]], places: Sequence[int]) -> Iterable[Cell]:
    for row in rows:
        for place in places:
            if place < len(row):
                yield row[place]


def _names(grid: Grid, heading: int) -> tuple[str, ...]:
    row = grid.rows[heading - 1] if 0 < heading <= len(grid.rows) else ()
    cells = [row[place] if place < len(row) else None for place in range(grid.width)]
    return tuple(" ".join(shown(cell).split()) or letter(i) for i, cell in enumerate(cells))


def _samples(grid: Grid, heading: int) -> list[list[Cell]]:
    """The filled cells of each column, from as many rows as tell what it is."""
    columns: list[list[Cell]] = [[] for _ in range(grid.width)]
    for row in grid.rows[heading : heading + _SAMPLED]:
        for place, cell in enumerate(row):
            if cell is not None:
                columns[place].append(cell)
    return columns


def _roles(
    names: Sequence[str], samples: Sequence[Sequence[Cell]], known: Known
) -> tuple[Role, ...]:
    """Each role to the column that looks the part most, each column one role."""
    scored = sorted(
        (
            (_score(name, cells, role, known), -place, role)
            for place, (name, cells) in enumerate(zip(names, samples, strict=True))
            for role in Role
            if role is not Role.LEAVE_OUT
        ),
        key=lambda one: (one[0], one[1]),
        reverse=True,
    )
    roles = [Role.LEAVE_OUT] * len(names)
    given: set[Role] = set()
    for score, place, role in scored:
        if score <= 0:
            break
        if role not in given and roles[-place] is Role.LEAVE_OUT:
            roles[-place] = role
            given.add(role)
    return _settled(roles)


def _settled(roles: list[Role]) -> tuple[Role, ...]:
    """The same without roles that would count a sum twice."""
    paid = {role for role in roles if role in AMOUNTS}
    if Role.AMOUNT in paid:
        drop = {Role.EACH, Role.MONEY_OUT, Role.MONEY_IN}
    elif Role.MONEY_OUT in paid:
        drop = {Role.EACH}
    else:
        drop = {Role.MONEY_IN} if Role.EACH in paid else set()
    return tuple(Role.LEAVE_OUT if role in drop else role for role in roles)


def _score(name: str, cells: Sequence[Cell], role: Role, known: Known) -> float:
    """How much a column looks the part, by its heading and by its cells; 0 for not at all."""
    named = words.heading_score(name, role)
    if words.is_no_use(name) or not cells:
        return named if named == words.WHOLE else 0
    if role is Role.WHAT and not named:
        return 5 * _wordy(cells)
    share = _share(cells, role, known)
    if share is None:
        return named
    if named == words.WHOLE and role is Role.CURRENCY:
        return named  # A code that is none must be told, not passed over.
    if share < (_LEAST if named == words.WHOLE else _MOST):
        return 0
    if named:
        return named + 10 * share
    return 20 * share if role in _BY_CELLS_ALONE else 0


#: Roles that cells show without a heading.
_BY_CELLS_ALONE = frozenset((
    Role.DATE, Role.AMOUNT, Role.CURRENCY, Role.CATEGORY, Role.CONDITION, Role.AREA, Role.SUPPLIER,
    Role.PERSON,
))  # fmt: skip


def _share(cells: Sequence[Cell], role: Role, known: Known) -> float | None:
    """What share of a column's cells look the part; None for roles that any words can have."""
    tests = {
        Role.DATE: looks_like_day,
        Role.CURRENCY: _is_currency,
        Role.HOURS: _is_hours,
        Role.CATEGORY: lambda cell: words.category(shown(cell)) is not None,
        Role.CONDITION: lambda cell: words.condition(shown(cell)) is not None,
        Role.PAPER: lambda cell: words.paper(shown(cell)) is not None,
    }
    numbers = MONEY | {Role.QUANTITY, Role.MINUTES, Role.RATE}
    texts = [cell for cell in cells if isinstance(cell, str)]
    if role in tests:
        return sum(map(tests[role], cells)) / len(cells)
    if role in numbers:
        return sum(map(_is_number, cells)) / len(cells) * _is_like_money(cells, role)
    names = {Role.SUPPLIER: known.suppliers, Role.AREA: known.areas, Role.PERSON: known.people}
    if names.get(role):
        share = sum(" ".join(text.casefold().split()) in names[role] for text in texts)
        return share / len(cells) if share >= _MOST * len(cells) else None
    return None


def _wordy(cells: Sequence[Cell]) -> float:
    """What share of a column's cells are several words, where most are."""
    several = [isinstance(cell, str) and " " in cell and not _is_number(cell) for cell in cells]
    share = sum(several) / len(cells)
    return share if share >= _MOST else 0


def _is_like_money(cells: Sequence[Cell], role: Role) -> float:
    """Less for plain whole numbers in a row, which number the lines of a list."""
    if role is not Role.AMOUNT:
        return 1.0
    counted = [cell for cell in cells if isinstance(cell, Decimal)]
    whole = all(cell == cell.to_integral_value() for cell in counted)
    rising = all(b - a == 1 for a, b in pairwise(counted))
    return 0.0 if len(counted) > 2 and whole and rising else 1.0


def _is_currency(cell: Cell) -> bool:
    if not isinstance(cell, str) or len(cell.strip()) != 3:
        return isinstance(cell, str) and cell.strip() in "€£$"
    try:
        minor_units(cell.strip().upper())
    except JournalError:
        return False
    return True


def _is_hours(cell: Cell) -> bool:
    if isinstance(cell, Decimal | timedelta):
        return True
    if not isinstance(cell, str):
        return not isinstance(cell, bool) and hasattr(cell, "hour") and not hasattr(cell, "year")
    try:
        parse_hours(cell)
    except JournalError:
        return False
    return True


def _is_bank(
    names: Sequence[str], roles: Sequence[Role], samples: Sequence[Sequence[Cell]]
) -> bool:
    """Whether a sheet is a bank's list: by headings that only banks have, or by money going out."""
    own = {Role.CATEGORY, Role.CONDITION, Role.AREA, Role.HOURS, Role.QUANTITY, Role.PAPER}
    if own & set(roles):
        return False
    said = sum(words.is_bank_heading(name) for name in names)
    for place, role in enumerate(roles):
        if role is Role.AMOUNT:
            minus = sum(shown(cell).strip().startswith(("-", "\u2212")) for cell in samples[place])
            said += minus * 2 > len(samples[place])
    return said >= 2


def _currency(names: Sequence[str], own: str) -> str:
    """The currency that the headings name, as "Amount (GBP)" does, else the journal's."""
    for name in names:
        for sign, code in (("€", "EUR"), ("£", "GBP")):
            if sign in name:
                return code
        for word in name.replace("(", " ").replace(")", " ").split():
            if word.isupper() and _is_currency(word):
                return word
    return own


def _has_gaps(grid: Grid, heading: int, roles: Sequence[Role]) -> bool:
    """Whether dates are written once for several rows, as many keep their lists."""
    if Role.DATE not in roles:
        return False
    day, paid = roles.index(Role.DATE), [i for i, r in enumerate(roles) if r in AMOUNTS]
    gaps = filled = 0
    for row in grid.rows[heading : heading + _SAMPLED]:
        if any(place < len(row) and row[place] is not None for place in paid):
            has_day = day < len(row) and row[day] is not None
            is_labelled = any(isinstance(cell, str) and words.is_total(cell) for cell in row)
            filled += has_day
            gaps += bool(not has_day and filled and not is_labelled)
    return gaps >= max(2, 0.15 * (gaps + filled))
