"""Photos take turns: so much at once and no more, first come first served."""

import threading

import pytest

from inspector.record.photos import Busy, place_for_request
from inspector.record.photos.turns import MOST_AT_ONCE, MOST_REQUESTS, Turns


class Worker(threading.Thread):
    """Has a turn until it is released, and notes when it began."""

    def __init__(self, turns, amount, name, begun):
        super().__init__(name=name, daemon=True)
        self.turns, self.amount, self.begun = turns, amount, begun
        self.inside, self.leave = threading.Event(), threading.Event()

    def run(self):
        with self.turns.turn(self.amount):
            self.begun.append(self.name)
            self.inside.set()
            self.leave.wait(30)

    def finish(self):
        self.leave.set()
        self.join()


def in_line(turns, count):
    """Wait until so many are in the line."""
    with turns._changed:
        assert turns._changed.wait_for(lambda: len(turns._line) == count, 30)


def test_a_picture_waits_until_its_memory_is_free():
    """Two large pictures are not in work together, and two small ones are."""
    turns, begun = Turns(most_bytes=100, patience=30), []
    first, large, small = (
        Worker(turns, amount, name, begun)
        for amount, name in ((60, "first"), (60, "large"), (40, "small"))
    )
    first.start()
    assert first.inside.wait(30)
    large.start()
    in_line(turns, 1)
    small.start()
    in_line(turns, 2)
    # The small picture would find room, but it does not pass the one that came before it.
    assert ["first"] == begun
    first.finish()
    assert large.inside.wait(30)
    assert small.inside.wait(30)
    large.finish()
    small.finish()
    assert ["first", "large", "small"] == begun


def test_so_many_pictures_are_in_work_and_no_more():
    """However small they are, a picture beyond the number waits and then is refused for now."""
    turns, begun = Turns(most_bytes=1000, patience=0.05), []
    workers = [Worker(turns, 1, str(number), begun) for number in range(MOST_AT_ONCE)]
    for worker in workers:
        worker.start()
        assert worker.inside.wait(30)
    with pytest.raises(Busy, match="Try again in 5 seconds; nothing is lost"), turns.turn(1):
        pass
    workers[0].finish()
    with turns.turn(1):
        assert MOST_AT_ONCE == len(turns._in_work)
    workers[1].finish()
    assert ([], 0) == (turns._in_work, len(turns._line))


def test_a_picture_larger_than_all_has_its_turn_alone():
    """Nothing waits for ever."""
    with Turns(most_bytes=100, patience=0.05).turn(1000):
        pass


def test_a_turn_ends_with_the_fault_in_it():
    """What a damaged picture took is free again."""
    turns = Turns(most_bytes=100, patience=0.05)
    with pytest.raises(ValueError, match="damaged"), turns.turn(100):
        raise ValueError("damaged")
    with turns.turn(100):
        pass


def test_the_request_beyond_the_places_is_refused_at_once():
    """It keeps no thread of the server waiting."""
    places = [place_for_request() for _ in range(MOST_REQUESTS)]
    for place in places:
        place.__enter__()
    try:
        with pytest.raises(Busy), place_for_request():
            pass
    finally:
        for place in places:
            place.__exit__(None, None, None)
    with place_for_request():
        pass
