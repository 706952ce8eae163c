"""The time that a camera wrote orders the photos and tells how far its clock is off."""

from datetime import timedelta

import pytest

from inspector.assess.photo_times import (
    CameraClock,
    camera_clock,
    clock_sentence,
    in_order,
    shown_time,
)


def by_device(time):
    return {"taken": f"2026-05-02T{time}.000Z"}


def by_camera(dial, chosen):
    return {"camera_time": f"2026-05-02T{dial}", "taken": f"2026-05-02T{chosen}.000Z"}


def test_a_card_of_a_camera_that_is_chosen_later_takes_its_place_among_the_others():
    """Photos of a camera two hours ahead of UTC, chosen in any order: its dial orders them, and
    puts them between those of the phone."""
    photos = {
        "phone 1": by_device("07:00:00"),
        "camera 3": by_camera("09:50:00", "07:50:00"),
        "camera 1": by_camera("09:10:00", "07:10:00"),
        "camera 2": by_camera("09:30:00", "07:30:20"),
        "phone 2": by_device("07:20:00"),
        "no time": {},
        "phone 3": by_device("08:00:00"),
    }
    assert [
        "phone 1",
        "camera 1",
        "phone 2",
        "no time",
        "camera 2",
        "camera 3",
        "phone 3",
    ] == in_order(photos)


def test_a_time_with_its_offset_is_ordered_by_utc():
    """09:00 at two hours ahead of UTC is before 07:30 UTC."""
    photos = {"b": by_device("07:30:00"), "a": by_camera("09:00:00+02:00", "12:00:00")}
    assert ["a", "b"] == in_order(photos)


def test_the_usual_difference_is_the_cameras_offset():
    """The median, with how many agree; pictures with an offset of their own do not count."""
    photos = [
        by_camera("09:10:00", "07:10:10"),
        by_camera("09:20:00", "07:21:00"),
        by_camera("09:30:00", "07:30:00"),
        by_camera("09:40:00", "11:40:00"),
        by_camera("09:00:00+02:00", "11:00:00"),
        by_device("07:00:00"),
    ]
    clock = camera_clock(photos)
    assert CameraClock(timedelta(hours=2), 4, 3) == CameraClock(
        timedelta(hours=round(clock.offset.total_seconds() / 3600)), clock.pictures, clock.agree
    )
    assert "3 of 4 pictures agree" in clock_sentence(clock)
    assert "another camera" in clock_sentence(clock)


@pytest.mark.parametrize(
    ("dial", "words"),
    [
        ("09:07:00", "2 h 07 min ahead of UTC"),
        ("07:00:00", "0 h 00 min ahead of UTC"),
        ("03:30:00", "3 h 30 min behind UTC"),
    ],
)
def test_the_sentence_names_hours_minutes_and_direction(dial, words):
    """Of one picture that was chosen at 07:00 UTC."""
    sentence = clock_sentence(camera_clock([by_camera(dial, "07:00:00")]))
    assert words in sentence
    assert "1 of 1 pictures agree" in sentence


def test_without_a_camera_there_is_nothing_to_say():
    """Phones write the zone, or no time at all."""
    assert "" == clock_sentence(camera_clock([by_device("07:00:00"), {}]))


@pytest.mark.parametrize(
    "value", ["", "yesterday", "0001-01-01T00:00:00", "9999-12-31T23:59:59", 7, None, ["x"]]
)
def test_what_is_no_time_is_none(value):
    """A device may have written anything; the order stays that of recording."""
    fields = {"camera_time": value, "taken": value}
    assert "" == shown_time(fields)
    assert ["a", "b"] == in_order({"a": fields, "b": fields})


def test_the_camera_is_shown_before_the_device():
    """Its own word is nearer to the act."""
    assert "2026-05-02T09:10:00" == shown_time(by_camera("09:10:00", "07:10:00"))
    assert "2026-05-02T07:10:00.000Z" == shown_time(by_device("07:10:00"))
