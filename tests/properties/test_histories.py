"""Rules of a job's history: order does not matter where it should not, nothing is said for nothing, done stays done."""

from __future__ import annotations

from histories import (
    FIELDS,
    OFF,
    alike,
    alterations,
    altered,
    jobs,
    laid,
    looks,
    measurements,
    size_of,
    told,
    unlike,
)
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from stand import every_part, look

from benchjoin import keep, lay_out
from benchjoin.frame.address import value
from benchjoin.frame.finished import STATES
from benchjoin.frame.identity import of_piece

FEWER = settings(max_examples=20)


class TestOrder:
    """Whatever order facts come in, they give the same layout. That holds for measurements of different parts and
    alterations of different values among each other, for keeps of different parts among each other, and for keeps in
    one piece among measurements in another. It does not hold for a keep and an alteration, or a keep and a measurement
    in the same piece: a part is kept as it is laid out at that time."""

    @FEWER
    @given(st.data())
    def test_measurements_and_alterations_in_any_order(self, data):
        frame = data.draw(jobs())
        changes = data.draw(alterations(frame)) | data.draw(measurements(laid(frame), every_part(frame)))
        orders = st.permutations(sorted(changes.items()))
        one, other = data.draw(orders), data.draw(orders)
        done = []
        for order in (one, other):
            after = frame
            for address, given_value in order:
                after = altered(after, {address: given_value})
            done.append(after)
        assert done[0] == done[1] == altered(frame, changes)
        first, second = map(laid, done)
        assert (looks(first), told(first)) == (looks(second), told(second))

    @FEWER
    @given(st.data())
    def test_keeps_in_one_piece_and_measurements_in_another_in_any_order(self, data):
        frame = data.draw(jobs())
        names = frame.part_names()
        kept = data.draw(st.lists(st.sampled_from(names), min_size=1, max_size=3, unique=True))
        steps = [(f"1/{name}", data.draw(st.sampled_from(STATES))) for name in kept]
        steps += data.draw(measurements(laid(frame), [f"2/{name}" for name in names])).items()
        layouts = []
        for order in (steps, data.draw(st.permutations(steps))):
            after = frame
            for where, what in order:
                after = keep(laid(after), where, state=what) if what in STATES else altered(after, {where: what})
            layouts.append(laid(after))
        one, other = layouts
        assert unlike(one, other) == []
        assert told(one) == told(other)

    @FEWER
    @given(st.data())
    def test_to_write_down_what_is_done_moves_nothing(self, data):
        frame = data.draw(jobs())
        found = data.draw(measurements(laid(frame), every_part(frame)))
        before = laid(altered(frame, found))
        names = [address.rpartition(".")[0] for address in found]
        names += data.draw(st.lists(st.sampled_from(every_part(frame)), max_size=4))
        after = lay_out(keep(before, *names, state=data.draw(st.sampled_from(STATES))))
        assert unlike(after, before) == []


class TestNothingIsSaidForNothing:
    """A size that is given and is not what the part has anyway changes the layout, or a finding tells of it."""

    @FEWER
    @given(st.data())
    def test_a_measured_size_changes_the_layout_or_is_told(self, data):
        frame = data.draw(jobs())
        names = frame.part_names()
        before = laid(frame)
        frame = laid(altered(frame, data.draw(measurements(before, every_part(frame))))).frame
        done = data.draw(st.lists(st.sampled_from(every_part(frame)), max_size=4, unique=True))
        if done:
            frame = keep(laid(frame), *done, state=data.draw(st.sampled_from(STATES)))
        before = laid(frame)
        kept = [before.part(each).identity for each in done]
        name = data.draw(st.one_of(st.sampled_from(kept or names), st.sampled_from([*names, *every_part(frame)])))
        field = data.draw(st.sampled_from(FIELDS))
        given_size = size_of(before.part(name), field) + data.draw(OFF)
        whose = [before.part(of_piece(n, name)) for n in (1, 2)] if name in names else [before.part(name)]
        assume(all(abs(size_of(part, field) - given_size) > frame.tape.hair for part in whose))
        assume(value(frame, f"{name}.{field}") != given_size)
        after = laid(altered(frame, {f"{name}.{field}": given_size}))
        new = {f for f in told(after) if f not in told(before)}
        about = {where for _, _, where, _ in new}
        told_of = {part.name for part in whose} | {part.identity for part in whose} | {f"{name}.{field}"}
        assert unlike(after, before) or about & told_of


class TestDoneStaysDone:
    """Nothing of a finished part moves, whatever is altered or is measured on other parts afterwards."""

    @settings(max_examples=80)
    @given(st.data())
    def test_size_shoulders_and_depths_of_what_is_finished(self, data):
        frame = data.draw(jobs())
        every = every_part(frame)
        state = data.draw(st.sampled_from(STATES))
        done = data.draw(st.lists(st.sampled_from(every), min_size=3, max_size=8, unique=True))
        before = laid(frame)
        frame = keep(before, *done, state=state)
        others = [name for name in (*every, *frame.part_names()) if name not in done]
        changes = data.draw(alterations(frame)) | data.draw(measurements(before, others, most=12))
        after = laid(altered(frame, changes))
        for name in done:
            (size, cuts), (size_now, cuts_now) = look(before.part(name)), look(after.part(name))
            assert alike(sorted(size_now), sorted(size))
            if state != "sized":
                assert all(any(alike(cut, now) for now in cuts_now) for cut in cuts)
                assert alike(size_now, size)
