"""The spring of stage.yaml in SimPy: the same rules, a process for each tray.

Prints how many plants are on time, what each spring takes of a processor, and how many there were.
Only what stage.yaml has is simulated: no potting on, no failed trays, nothing that is overheld.
"""
import csv
import datetime
import math
import random
import statistics
import sys
import time

import simpy

CELLS, RATE, LEAVE_AT, WINDOW = 72, 0.9, 36, 6.0
MEDIAN, MOST = 6.5, 9.5
NORMAL = statistics.NormalDist()
SPREAD = math.log(MOST / MEDIAN) / NORMAL.inv_cdf(0.9)
# Development on the table, 18 C, against the chamber's 22 C; base 9 C.
ON_TABLE = (18 - 9) / (22 - 9)
TAKES, TAKES_SPREAD, LOSS, HARDENING, HARDENING_LOSS = 24.0, 0.08, 0.03, 10, 0.02
ROUND = 8 / 24
START, DAYS = datetime.date(2027, 1, 4), 182


def binomial(n, p):
    """By the gaps between what is rarer."""
    if p > 0.5:
        return n - binomial(n, 1 - p)
    if p <= 0:
        return 0
    hits, at, rarely = 0, 0, math.log1p(-p)
    while True:
        at += math.floor(math.log(1 - random.random()) / rarely) + 1
        if at > n:
            return hits
        hits += 1


def shown_by(days):
    """Share of the seeds that come up that show by then."""
    return NORMAL.cdf(math.log(days / MEDIAN) / SPREAD)


def next_round(now):
    """What falls due at the very hour of a round is found on it."""
    return math.ceil(now - ROUND - 1e-9) + ROUND - now


class Spring:
    def __init__(self, sowings):
        self.env = simpy.Environment()
        self.chamber = simpy.PriorityResource(self.env, 60)
        self.house = simpy.PriorityResource(self.env, 160)
        self.on_time = 0
        rank = 0
        for sow, trays, bed_from, bed_by in sowings:
            for _ in range(trays):
                self.env.process(self.tray(rank, sow, bed_from, bed_by))
                rank += 1
        self.env.run(until=DAYS)

    def tray(self, rank, sow, bed_from, bed_by):
        env = self.env
        yield env.timeout(sow + ROUND)
        heat = self.chamber.request(priority=rank)
        yield heat
        filled = binomial(CELLS, RATE)
        sown = env.now
        if filled < LEAVE_AT:
            raise ValueError("a tray fails, which is not simulated")
        share = random.betavariate(LEAVE_AT, filled - LEAVE_AT + 1)
        ready = MEDIAN * math.exp(SPREAD * NORMAL.inv_cdf(share))
        yield env.timeout(ready)
        yield env.timeout(next_round(env.now))
        table = self.house.request(priority=rank)
        yield table
        self.chamber.release(heat)
        later = shown_by(env.now - sown + WINDOW * ON_TABLE)
        plants = LEAVE_AT + binomial(filled - LEAVE_AT, (later - share) / (1 - share))
        yield env.timeout(TAKES * math.exp(random.gauss(0, TAKES_SPREAD)))
        yield env.timeout(next_round(env.now))
        self.house.release(table)
        plants -= binomial(plants, LOSS)
        yield env.timeout(max(HARDENING + 1, bed_from + ROUND - env.now))
        plants -= binomial(plants, HARDENING_LOSS)
        if env.now < bed_by + 1:
            self.on_time += plants


def main(folder, springs):
    def day(text):
        return (datetime.date.fromisoformat(text) - START).days

    with open(folder + "/sowings.csv", encoding="utf-8") as file:
        sowings = [
            (day(row["sow"]), int(row["trays"]), day(row["bed-from"]), day(row["bed-by"]))
            for row in csv.DictReader(file)
        ]
    random.seed(1)
    begun = time.process_time()
    on_time = [Spring(sowings).on_time for _ in range(springs)]
    took = (time.process_time() - begun) / springs
    error = statistics.stdev(on_time) / math.sqrt(springs)
    print(statistics.mean(on_time), error, took)


if __name__ == "__main__":
    main(sys.argv[1], int(sys.argv[2]))
