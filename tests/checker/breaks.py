"""Ways to break a good schedule document, each certain to break one rule of one step."""

from __future__ import annotations

import copy
from typing import Iterator

from schedule_check import rules_limits, rules_told, rules_windows
from schedule_check.document import MILESTONES, seconds
from spoil import Break, Document

KINDS = ("start", "lag", "span", "limit", "resource", "milestone", "choice", "order", "told")
HOUR = 3600


def starts(d: Document) -> Iterator[Break]:
    for line in d.planned():
        for minutes in (1, 2, 3, 4):
            yield Break("start", f"{line.id} {minutes} min off the grid", ("grid",), (line.id,),
                        d.moved(line.id, line.start + 60 * minutes))
        yield Break("start", f"{line.id} before the horizon", ("horizon",), (line.id,),
                    d.moved(line.id, d.schedule.begin - d.grid))
        for minutes in (-5, 5, 20):
            def longer(made, line=line, minutes=minutes):
                one = d.line(made, line.id)
                one["attended_until"] = d.text(line.attended_until + 60 * minutes)
                if d.schedule.steps[line.id].resin is None:
                    one["end"] = one["attended_until"]
            if d.schedule.steps[line.id].attended + 60 * minutes >= 0:
                yield Break("start", f"{line.id} takes {minutes:+d} min", ("attended",),
                            (line.id,), d.changed(longer))

        def nobody(made, line=line):
            d.line(made, line.id)["who"] = "nobody"
        yield Break("start", f"{line.id} by nobody", ("who",), (line.id,), d.changed(nobody))


def _inside(spans, start: float, until: float) -> bool:
    return any(a <= start and until <= b for a, b in spans)


def spans(d: Document) -> Iterator[Break]:
    for line in d.planned():
        person = line.who or next(iter(d.schedule.calendars))
        own = d.schedule.calendars[person]
        start = line.start
        while _inside(own, start, start + line.attended_until - line.start):
            start += d.grid
        yield Break("span", f"{line.id} after hours", ("hours",), (line.id,),
                    d.moved(line.id, start))

        def cut(made, line=line, person=person, how="end"):
            calendar = next(c for c in made["calendars"] if c["id"] == person)
            for span in calendar["spans"]:
                if seconds(span["from"]) <= line.start < seconds(span["to"]):
                    if how == "end":
                        span["to"] = d.text(line.attended_until - 300)
                    elif how == "start":
                        span["from"] = d.text(line.start + 300)
                    else:
                        calendar["spans"].remove(span)
                    return
        for how in ("end", "start", "whole"):
            yield Break("span", f"{line.id} with the {how} of its span gone", ("hours",),
                        (line.id,),
                        d.changed(lambda made, cut=cut, how=how: cut(made, how=how)))
        for other, their in d.schedule.calendars.items():
            if other != person and not _inside(their, line.start, line.attended_until):
                def give(made, line=line, other=other):
                    d.line(made, line.id)["who"] = other
                yield Break("span", f"{line.id} by {other}, who is not there", ("hours",),
                            (line.id,), d.changed(give))


def lags(d: Document) -> Iterator[Break]:
    """Before the least lag, after the greatest one; those of milestones count as such."""
    for line, after, before, event in d.lags():
        kind = "milestone" if after.event in MILESTONES else "lag"
        took = line.attended_until - line.start if after.of == "end" else 0
        allowed = d.events.allowance(before, after.event)
        name = f"{line.id} against {after.event} of {after.id}"
        for slots in (1, 4, 12):
            if after.least is not None:
                at = event + after.least - allowed - 1 - took
                at -= (at - d.schedule.begin) % d.grid + d.grid * (slots - 1)
                yield Break(kind, f"{name}, {slots} slots too soon", ("lag",), (line.id,),
                            d.moved(line.id, at))
            if after.most is not None:
                at = event + after.most + allowed + 1 - took
                at += -(at - d.schedule.begin) % d.grid + d.grid * (slots - 1)
                yield Break(kind, f"{name}, {slots} slots too late", ("lag",), (line.id,),
                            d.moved(line.id, at))


def limits(d: Document) -> Iterator[Break]:
    weather = d.schedule.weather
    dry = weather.room_kind != "outdoors" and weather.humidity_max is not None
    for line in d.planned():
        if d.schedule.steps[line.id].resin is None:
            continue
        for item in rules_told.items(d.events, line):
            if item.limit is None:
                continue
            value = rules_limits.worst(d.events, line, item.limit)[0]

            def stricter(made, line=line, item=item, value=value):
                step = next(s for s in made["steps"] if s["id"] == line.id)
                for limit in step["limits"]:
                    if limit["name"] == item.name:
                        side, sign = ("min", 1) if limit["min"] is not None else ("max", -1)
                        limit[side] = value + sign * 3.0 * item.allowed
            yield Break("limit", f"{line.id} under a stricter {item.name}", ("limit",),
                        (line.id,), d.changed(stricter))
            if item.name in ("dew_margin", "humidity") and not dry:
                yield Break("limit", f"{line.id} in fog, {item.name}", ("limit",), (line.id,),
                            d.changed(lambda made, line=line: _fog(d, made, line)))
        tack_free = d.events.when(line, "tack_free")
        names = {limit.name for limit in d.schedule.steps[line.id].limits}
        for name, kelvin in (("warm", 30.0), ("cold", -30.0)):
            if name not in names or (name == "cold" and weather.room_kind == "heated"):
                continue
            yield Break("limit", f"{line.id} with outdoor air {kelvin:+g} K", ("limit",),
                        (line.id,), d.changed(lambda made, line=line, kelvin=kelvin:
                                              _heat(d, made, line, kelvin)))

        def gap(made, line=line):
            made["weather"]["gaps"].append({"from": d.text(line.start + 600),
                                            "to": d.text(line.start + 7800), "of": "air"})
        yield Break("limit", f"{line.id} in a gap of the weather", ("limit",), (line.id,),
                    d.changed(gap))

        def shorter(made, tack_free=tack_free):
            made["weather"]["known_until"] = d.text(tack_free - 3600)
        if tack_free - 3600 - weather.series[0].time > 30 * HOUR:
            yield Break("limit", f"weather known until {line.id} is not yet tack-free",
                        ("limit",), (line.id,), d.changed(shorter))


def _fog(d: Document, made: dict, line) -> None:
    until = d.events.when(line, "tack_free")
    for point in made["weather"]["series"]:
        if line.start - 2 * HOUR <= seconds(point["time"]) <= until + 2 * HOUR:
            point["dew_c"] = 45.0


def _heat(d: Document, made: dict, line, kelvin: float) -> None:
    """For five lags before, until the film is tack-free."""
    until = d.events.when(line, "tack_free")
    begin = line.start - 5.0 * d.schedule.weather.lag - HOUR
    for point in made["weather"]["series"]:
        if begin <= seconds(point["time"]) <= until + HOUR:
            point["air_c"] += kelvin


def resources(d: Document) -> Iterator[Break]:
    held = {}
    for line in d.schedule.timeline:
        for id, start, until in line.uses:
            held.setdefault(id, []).append((start, until, line.id))
    for id, uses in held.items():
        peak, step = 0, None
        for start, _, who in uses:
            now = sum(1 for a, b, _ in uses if a <= start < b)
            if now > peak and d.events.placed[who].state == "planned":
                peak, step = now, who
        if step is None:
            continue

        def fewer(made, id=id, peak=peak):
            next(r for r in made["resources"] if r["id"] == id)["count"] = peak - 1
        yield Break("resource", f"{peak - 1} of {id}", ("resource",), (step,), d.changed(fewer))
    for line in d.planned():
        for other in d.planned():
            same = d.schedule.steps[line.id].job == d.schedule.steps[other.id].job
            if same and other.id != line.id:
                yield Break("resource", f"{line.id} while {other.id}", ("resource",),
                            (line.id, other.id), d.moved(line.id, other.start))
            elif other.id != line.id:
                def both(made, line=line, other=other):
                    d.move(made, line.id, other.start)
                    d.line(made, line.id)["who"] = d.line(made, other.id)["who"]
                yield Break("resource", f"{line.id} by one who does {other.id}", ("resource",),
                            (line.id, other.id), d.changed(both))
        for id, start, until in line.uses:
            def falsify(made, line=line, id=id, until=until):
                use = next(u for u in d.line(made, line.id)["uses"] if u["id"] == id)
                use["to"] = d.text(until + 3 * HOUR)
            yield Break("resource", f"{line.id} uses {id} longer", ("resource",), (line.id,),
                        d.changed(falsify))

            def drop(made, line=line, id=id):
                uses = d.line(made, line.id)["uses"]
                uses.remove(next(u for u in uses if u["id"] == id))
            yield Break("resource", f"{line.id} without {id}", ("resource",), (line.id,),
                        d.changed(drop))
    yield from _dust(d)


def _dust(d: Document) -> Iterator[Break]:
    if d.schedule.weather.sanding_room:
        return
    steps = d.schedule.steps
    for line in d.planned():
        room = steps[line.id].room
        if room is None or room.mode != "dusty":
            continue
        for wet in d.planned():
            if steps[wet.id].room is not None and steps[wet.id].room.mode == "clean":
                yield Break("resource", f"{line.id} beside the open film of {wet.id}", ("room",),
                            (line.id, wet.id), d.moved(line.id, wet.attended_until))


def milestones(d: Document) -> Iterator[Break]:
    for line in d.planned():
        for name, time, _ in line.milestones:
            off = max(600.0, 0.02 * (time - line.start))

            def falsify(made, line=line, name=name, at=0.0):
                told = next(m for m in d.line(made, line.id)["milestones"] if m["name"] == name)
                told["time"] = d.text(at)
                d.line(made, line.id)["milestones"].sort(key=lambda m: seconds(m["time"]))
            for sign in (-1, 1):
                yield Break("milestone", f"{name} of {line.id} told {sign * off:+.0f} s off",
                            ("milestone",), (line.id,),
                            d.changed(lambda made, falsify=falsify, at=time + sign * off:
                                      falsify(made, at=at)))

            def drop(made, line=line, name=name):
                one = d.line(made, line.id)
                one["milestones"] = [m for m in one["milestones"] if m["name"] != name]
            yield Break("milestone", f"{name} of {line.id} not told", ("milestone",), (line.id,),
                        d.changed(drop))


def choices(d: Document) -> Iterator[Break]:
    for choice in d.schedule.choices.values():
        for option in [*choice.options, None]:
            if option == choice.chosen:
                continue
            # A step of either option that stands in the timeline, or then does not.
            concerned = tuple(s.id for s in d.schedule.steps.values()
                              if s.group == choice.group and s.option in (option, choice.chosen))
            if not concerned:
                continue

            def swap(made, choice=choice, option=option):
                next(c for c in made["choices"] if c["group"] == choice.group)["chosen"] = option
            yield Break("choice", f"{choice.group}: {option}", ("choice",), concerned,
                        d.changed(swap))
    for line in d.schedule.timeline:
        if d.schedule.steps[line.id].optional:
            def drop(made, line=line):
                made["timeline"].remove(d.line(made, line.id))
            yield Break("choice", f"{line.id} left out, though chosen", ("choice",), (line.id,),
                        d.changed(drop))


def orders(d: Document) -> Iterator[Break]:
    for line in d.planned():
        if not d.schedule.steps[line.id].optional:
            def drop(made, line=line):
                made["timeline"].remove(d.line(made, line.id))
            yield Break("order", f"{line.id} left out", ("once",), (line.id,), d.changed(drop))

        def twice(made, line=line):
            at = made["timeline"].index(d.line(made, line.id))
            made["timeline"].insert(at, copy.deepcopy(made["timeline"][at]))
        yield Break("order", f"{line.id} twice", ("once", "choice"), (line.id,), d.changed(twice))
    lines = d.schedule.timeline
    for i in range(len(lines) - 1):
        if lines[i].start < lines[i + 1].start:
            def swap(made, i=i):
                timeline = made["timeline"]
                timeline[i], timeline[i + 1] = timeline[i + 1], timeline[i]
            yield Break("order", f"{lines[i + 1].id} listed before {lines[i].id}", ("sorted",),
                        (lines[i].id,), d.changed(swap))
    for line, after, before, _ in d.lags():
        if after.least is None:
            continue
        if before.state == "planned" and after.event == "end":
            def exchange(made, line=line, before=before):
                d.move(made, line.id, before.start)
                d.move(made, before.id, before.start + line.attended_until - line.start)
            yield Break("order", f"{line.id} before {before.id}", ("lag",), (line.id,),
                        d.changed(exchange))
        if before.state == "planned":
            def done(made, line=line):
                d.line(made, line.id)["state"] = "done"
            yield Break("order", f"{line.id} done, {before.id} not", ("done",), (line.id,),
                        d.changed(done))
        if before.state != "planned" and after.event == "end":
            def later(made, line=line, after=after, before=before):
                d.line(made, before.id)["attended_until"] = d.text(line.start - after.least + 60)
            yield Break("order", f"{before.id} ended later than {line.id} allows", ("lag",),
                        (line.id,), d.changed(later))


def windows(d: Document) -> Iterator[Break]:
    """Open where a limit is broken, closed where it is kept; alternatives off the grid."""
    for i, window in enumerate(d.schedule.windows):
        film = rules_windows.film_started(d.events, window.wet, window.start)
        if window.limit in ("hours", "weather") or not rules_limits.is_known(d.events, film):
            continue
        left = rules_windows.slack_of(d.events, film)
        at = d.schedule.clock(window.start)

        def say(made, i=i, ok="good", limit=None):
            made["windows"][i].update(ok=ok, limit=limit)
        if any(slack < -3.0 for slack in left.values()):
            yield Break("told", f"{window.wet} open {at}", ("window",), (window.wet,),
                        d.changed(say))
        for name, slack in left.items():
            if slack > 3.0:
                yield Break("told", f"{window.wet} closed {at} by {name}", ("window",),
                            (window.wet,), d.changed(lambda made, say=say, name=name:
                                                     say(made, ok="refuse", limit=name)))
    for i, alternative in enumerate(d.schedule.alternatives):
        for j, (id, start) in enumerate(alternative.starts.items()):
            if id in d.events.placed and d.events.placed[id].state == "planned":
                def move(made, i=i, j=j, start=start):
                    made["alternatives"][i]["starts"][j]["start"] = d.text(start + 60)
                yield Break("told", f"alternative {i + 1}: {id} off the grid",
                            (f"alternative {i + 1}, grid",), (id,), d.changed(move))


def told(d: Document) -> Iterator[Break]:
    """What the document says of itself."""
    yield from windows(d)
    for line in d.planned():
        for i, item in enumerate(line.slack):
            def slack(made, line=line, i=i):
                one = d.line(made, line.id)["slack"][i]
                one["slack"] += 30.0 if one["limit"] == "window" else 0.1
            yield Break("told", f"slack of {line.id}, {item.limit}, too great", ("slack",),
                        (line.id,), d.changed(slack))

        def air(made, line=line):
            d.line(made, line.id)["room_c"] += 0.2
        yield Break("told", f"room of {line.id} too warm", ("told",), (line.id,), d.changed(air))
    for i in range(0, len(d.made["weather"]["series"]), 17):
        def room(made, i=i):
            made["weather"]["series"][i]["room_c"] -= 0.1
        point = d.schedule.clock(d.schedule.weather.series[i].time)
        yield Break("told", f"room too cold {point}", ("weather",), (point,), d.changed(room))

    def objective(key, value, step):
        def change(made):
            made["objective"][key] = value
        return Break("told", f"objective {key}", ("objective",), (step,), d.changed(change))
    told = d.schedule.objective
    yield objective("visits", told.visits + 1, "visits")
    yield objective("finish", d.text(told.finish - 600), "finish")
    yield objective("slack", [told.tight[0] + 9, *told.tight[1:]], "slack")

    def later(made):
        made["finish"] = d.text(d.schedule.finish + 300)
    yield Break("told", "finish", ("finish",), ("all",), d.changed(later))


def all_breaks(made: dict) -> list[Break]:
    d = Document(made)
    return [one for breaks in (starts, lags, spans, limits, resources, milestones, choices, orders,
                           told)
            for one in breaks(d)]
