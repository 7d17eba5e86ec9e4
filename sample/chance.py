# SPDX-License-Identifier: GPL-3.0-or-later
"""Chance that comes out the same on every machine: one named stream for each thing."""
import random


class Chance:
    def __init__(self, *names):
        self._random = random.Random("outyard sample 2026|" + "|".join(str(n) for n in names))

    def between(self, low, high):
        return low + (high - low) * self._random.random()

    def whole(self, low, high):
        return low + int(self._random.random() * (high - low + 1))

    def yes(self, probability):
        return self._random.random() < probability

    def pick(self, choices):
        return choices[int(self._random.random() * len(choices))]

    def normal(self):
        """Nearly a standard normal: twelve uniforms less six."""
        return sum(self._random.random() for _ in range(12)) - 6

    def shuffled(self, items):
        items = list(items)
        for i in range(len(items) - 1, 0, -1):
            k = int(self._random.random() * (i + 1))
            items[i], items[k] = items[k], items[i]
        return items


def steps(value, step):
    """Rounded to a step, as a person writes it down."""
    return round(round(value / step) * step, 4)
