"""The strips and banners: what was done, what is under way, what stands in the way."""

from pathlib import Path
from types import SimpleNamespace

import pytest

from journal.desktop.add_summary import AddSummary, summary_words
from journal.desktop.message_bar import MessageBar
from journal.desktop.progress_strip import ProgressStrip, progress_words, time_left
from journal.desktop.tasks import Running, Task
from journal.domain.ids import PhotoId, Sha256


def running(**changes):
    task = Task("Adding photos", lambda context: None, None, writes=True)
    values = {
        "task": task,
        "label": "Adding photos",
        "step": "Copying",
        "done": 120,
        "total": 3000,
        "seconds_left": 130.0,
        "cancelling": False,
    }
    return Running(**{**values, **changes})


@pytest.mark.parametrize(
    ("seconds", "words"),
    [
        (None, ""),
        (3, "a few seconds left"),
        (42, "about 40 s left"),
        (130, "about 2 min left"),
        (3 * 3600, "about 3 h left"),
    ],
)
def test_the_time_left_is_said_as_a_person_would(seconds, words):
    assert time_left(seconds) == words


def test_progress_says_what_how_many_and_how_long():
    assert progress_words(running()) == "Copying · 120 of 3,000 · about 2 min left"


def test_progress_without_a_total_says_how_many_so_far():
    assert progress_words(running(total=0, seconds_left=None)) == "Copying · 120"


def test_a_job_asked_to_stop_says_so():
    assert "stopping" in progress_words(running(cancelling=True))


def test_cancel_asks_the_job_to_stop(qtbot):
    strip = ProgressStrip()
    qtbot.addWidget(strip)
    strip.show()
    now = running()
    strip.show_progress((now,))
    strip._cancel.click()
    assert now.task.is_cancelled
    assert not strip._cancel.isEnabled()


def test_the_strip_is_quiet_once_no_job_runs(qtbot):
    strip = ProgressStrip()
    qtbot.addWidget(strip)
    strip.show()
    strip.show_progress((running(), running()))
    assert strip._cancel.isVisible()
    assert "1 more waiting" in strip._job.text()
    strip.show_progress(())
    assert not strip._cancel.isVisible()


def test_words_offer_undo_only_where_there_is_one(qtbot):
    strip = ProgressStrip()
    qtbot.addWidget(strip)
    strip.show()
    strip.say("Pin 3 photos to Sill, left", can_undo=True)
    with qtbot.waitSignal(strip.undo_wanted):
        strip._undo.click()
    strip.say("Checked")
    assert not strip._undo.isVisible()


def test_idle_words_come_back_after_a_message(qtbot):
    strip = ProgressStrip()
    qtbot.addWidget(strip)
    strip.set_idle("Kept in a folder")
    strip.say("Done")
    assert strip._words.text() == "Done"
    strip._clear_words()
    assert strip._words.text() == "Kept in a folder"


def test_the_same_message_is_shown_once_and_never_more_than_three(qtbot):
    bar = MessageBar()
    qtbot.addWidget(bar)
    bar.show_message("The disk is full.", "error")
    bar.show_message("The disk is full.", "error")
    assert len(bar.banners()) == 1
    for number in range(5):
        bar.show_message(f"Obstacle {number}", "error")
    assert [b.text for b in bar.banners()] == ["Obstacle 2", "Obstacle 3", "Obstacle 4"]


def test_a_state_stays_while_messages_are_put_away(qtbot):
    bar = MessageBar()
    qtbot.addWidget(bar)
    bar.state("Iris has this journal open; it is read-only here.")
    bar.show_message("Not done.", "error")
    bar.clear()
    assert [b.text for b in bar.banners()] == ["Iris has this journal open; it is read-only here."]
    bar.state("")
    assert bar.banners() == []


def report(added=0, already=0, skipped=(), refused=(), cancelled=False):
    def one(n):
        return SimpleNamespace(path=Path(f"{n}.jpg"), sha256=Sha256("0" * 64), photo_id=PhotoId(n))

    def left(pairs):
        return tuple(SimpleNamespace(path=Path(p), reason=why) for p, why in pairs)

    return SimpleNamespace(
        added=tuple(one(n) for n in range(added)),
        already=tuple(one(n) for n in range(already)),
        skipped=left(skipped),
        refused=left(refused),
        cancelled=cancelled,
    )


def test_a_summary_leaves_out_what_did_not_happen():
    assert summary_words(report(added=1)) == "1 photo added."
    words = summary_words(report(1204, 12, [("a", "b")], [("c", "d"), ("e", "f")]))
    assert words == "1,204 photos added, 12 already there, 1 skipped, 2 couldn't be read."


def test_a_cancelled_adding_says_so():
    assert summary_words(report(added=5, cancelled=True)).startswith("Stopped as you asked. 5")


def test_files_left_out_are_listed_with_their_reasons(qtbot):
    summary = AddSummary()
    qtbot.addWidget(summary)
    summary.show_report(
        report(3, 1, [("IMG_1.AAE", "it only describes another photo")], [("x.jpg", "it is empty")])
    )
    tops = [summary._list.topLevelItem(n) for n in range(summary._list.topLevelItemCount())]
    assert [top.text(0) for top in tops] == [
        "Couldn't be read (1)",
        "Skipped (1)",
        "Already there (1)",
    ]
    assert tops[0].child(0).text(1) == "it is empty"
    assert summary._list.isVisible()


def test_a_clean_summary_has_no_list(qtbot):
    summary = AddSummary()
    qtbot.addWidget(summary)
    summary.show_report(report(3))
    assert not summary._toggle.isVisible()
    assert not summary._list.isVisible()
