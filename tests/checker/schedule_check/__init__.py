"""Checks a schedule document (docs/formats/schedule.md) with nothing but the document.

Shares no code with src/: other numerics for the room and the films, rules written down once more.
"""
