"""What was found: how many rules were looked at, and those that are broken."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Broken:
    rule: str  # "lag", "hours", "limit" ...
    step: str  # id; or what else is concerned: "objective"
    text: str

    def __str__(self) -> str:
        return f"{self.rule}: {self.step}: {self.text}"


class Report:
    def __init__(self):
        self.rules = 0
        self.broken: list[Broken] = []

    def rule(self, name: str, step: str, kept: bool, text) -> bool:
        """`text`: a function that says how it is broken."""
        self.rules += 1
        if not kept:
            self.broken.append(Broken(name, step, text()))
        return kept
