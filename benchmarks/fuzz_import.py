"""Throws damaged files at everything that reads measures, for a while: `fuzz_import.py --seconds 180`.

Seeds are the examples and a few foreign lists. They are cut, spliced, flipped, blown up and nested at
random, seeded, so that a run can be had again. Whatever is no refusal in words, takes longer than a few
seconds, or changes a book that it should not, is written down with the file that did it.
"""

from __future__ import annotations

import argparse
import random
import sys
import time
import traceback
from collections import Counter
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path
from tempfile import TemporaryDirectory

ROOT = Path(__file__).resolve().parent.parent
sys.path.insert(0, str(ROOT / "tests"))

from notchbook.app.charts.importing import import_into, preview_file
from notchbook.app.studio import Studio
from notchbook.body import read_bodies, read_measures
from notchbook.body.importing import Answers
from notchbook.body.importing.preview_data import preview_data
from notchbook.errors import NotchbookError
from support.book_dump import book_hash

LIMIT_S = 5.0
"""Seconds of work of the processor; no small file may take longer."""

MOST_BYTES = 60_000

SEEDS = (
    b'Name,Bust (in),Hip,Notes\nAnna,"37 1/2""",39 3/8,x\nBea,38,40,\n',
    "Größe;S;M;L\nBrustumfang (cm);84;92,5;100\nTaille;66;74;82\n".encode(),
    b"Measure\tValue\tUnit\nBust\t94\tcm\nWaist\t29 1/2\tin\n",
    b"Bust: 94 cm\nWaist: 74,5 cm\nShoulder slope: 23 deg\n",
    b'[{"client": "Anna", "Bust (cm)": 94.5}, {"client": "Bea", "Waist (in)": "27 3/8"}]',
    b"id,unit,hip_girth,hip_girth.status,hip_girth.error,waist_girth.readings\nb1,cm,98,estimated,1,74&75\n",
)

PIECES = (
    b"\0", b"\xff\xfe", b"\xef\xbb\xbf", b"\xed\xa0\x80", b'"', b'""', b",", b";", b"\t", b"|", b":", b"\n",
    b"\r", b"{", b"}", b"[", b"]", b"\\", b"1/0", b"9" * 400, b"1e999", b"NaN", b"-", b"=1+1", b"@left",
    b".error", b"unit", b"measures", b"null", "½".encode(), "\u202e".encode(), "\u2028".encode(), b"\x1c",
    b"#3", b"mm",
)  # fmt: skip

Mutation = Callable[[random.Random, bytes, tuple[bytes, ...]], bytes]


def flip(chance: random.Random, data: bytes, _others: tuple[bytes, ...]) -> bytes:
    """A few bytes with another value."""
    changed = bytearray(data)
    for _ in range(chance.randint(1, 4)):
        if changed:
            changed[chance.randrange(len(changed))] = chance.randrange(256)
    return bytes(changed)


def cut(chance: random.Random, data: bytes, _others: tuple[bytes, ...]) -> bytes:
    """A part taken out."""
    start = chance.randint(0, len(data))
    return data[:start] + data[start + chance.randint(0, 40) :]


def splice(chance: random.Random, data: bytes, others: tuple[bytes, ...]) -> bytes:
    """The beginning of one file and the end of another."""
    other = chance.choice(others)
    return data[: chance.randint(0, len(data))] + other[chance.randint(0, len(other)) :]


def put_in(chance: random.Random, data: bytes, _others: tuple[bytes, ...]) -> bytes:
    """A sign or word that means something to a reader, somewhere."""
    place = chance.randint(0, len(data))
    return data[:place] + chance.choice(PIECES) * chance.choice((1, 1, 1, 2, 50)) + data[place:]


def repeat(chance: random.Random, data: bytes, _others: tuple[bytes, ...]) -> bytes:
    """A part of it again and again: many rows, huge cells, deep brackets."""
    start = chance.randint(0, len(data))
    part = data[start : start + chance.randint(1, 30)]
    return data[:start] + part * chance.choice((2, 10, 1000, 5000)) + data[start:]


def swap_lines(chance: random.Random, data: bytes, _others: tuple[bytes, ...]) -> bytes:
    """The lines in another order."""
    lines = data.split(b"\n")
    chance.shuffle(lines)
    return b"\n".join(lines)


MUTATIONS: tuple[Mutation, ...] = (flip, cut, splice, put_in, put_in, repeat, swap_lines)


def damaged(chance: random.Random, seeds: tuple[bytes, ...]) -> bytes:
    """One of the seeds after one to four mutations."""
    data = chance.choice(seeds)
    for _ in range(chance.randint(1, 4)):
        data = chance.choice(MUTATIONS)(chance, data, seeds)[:MOST_BYTES]
    return data


class Victim:
    """A book and a folder; everything that reads measures is tried on one file after another."""

    def __init__(self, folder: Path, chance: random.Random) -> None:
        self.chance = chance
        self.file = folder / "list.csv"
        self.book = folder / "b.notchbook"
        self.studio = Studio.open(self.book)
        self.hash = book_hash(self.book)
        self.outcomes: Counter[str] = Counter()

    def try_on(self, data: bytes) -> None:
        """Read the bytes in every way; raises what is no refusal in words, or AssertionError."""
        self.file = self.file.with_suffix(self.chance.choice((".csv", ".json", ".tsv", ".txt")))
        self.file.write_bytes(data)
        answers = Answers(
            self.chance.choice((None, "cm", "in", "mm")), skip_unknown=self.chance.random() < 0.5
        )
        only_good = self.chance.random() < 0.5
        stored = 0
        try:
            shown = preview_file(self.file, answers)
            preview_data(shown)
            self.outcomes["preview"] += 1
            stored = import_into(self.studio, shown, only_good=only_good).stored
            self.outcomes["stored"] += 1
        except NotchbookError as refusal:
            assert refusal.text()
            assert refusal.next_step()
            self.outcomes[refusal.code] += 1
        for read in (read_measures, lambda place: list(read_bodies(place))):
            with suppress(NotchbookError):
                read(self.file)
        assert self.file.read_bytes() == data, "the file was changed"
        self._check_book(stored)
        self.file.unlink()

    def _check_book(self, stored: int) -> None:
        now = book_hash(self.book)
        assert (now == self.hash) == (stored == 0), f"{stored} sets stored, and the book says otherwise"
        self.hash = now
        if len(self.studio.list_bodies()) > 60:
            # A large book would only make the look at it slow.
            self.studio.close()
            for path in self.book.parent.glob("b.notchbook*"):
                path.unlink()
            self.studio = Studio.open(self.book)
            self.hash = book_hash(self.book)


def fuzz(seconds: float, seed: int, finds: Path) -> int:
    """Damage and try for so many seconds; how many finds there were."""
    chance = random.Random(seed)
    examples = sorted((ROOT / "examples/measures").iterdir())
    seeds = (*SEEDS, *(path.read_bytes() for path in examples if path.is_file()))
    ends = time.monotonic() + seconds
    tried = found = 0
    slowest = 0.0
    with TemporaryDirectory() as folder:
        victim = Victim(Path(folder), chance)
        while time.monotonic() < ends:
            data = damaged(chance, seeds)
            started = time.process_time()
            try:
                victim.try_on(data)
                took = time.process_time() - started
                assert took < LIMIT_S, f"took {took:.1f} s"
            except Exception:
                found += 1
                _keep(finds, found, data)
            slowest = max(slowest, time.process_time() - started)
            tried += 1
        victim.studio.close()
    print(f"{tried} files in {seconds:.0f} s, seed {seed}: {found} finds, slowest {slowest:.2f} s")
    for outcome, count in victim.outcomes.most_common():
        print(f"  {count:6} {outcome}")
    return found


def _keep(finds: Path, number: int, data: bytes) -> None:
    finds.mkdir(parents=True, exist_ok=True)
    (finds / f"find-{number}.bin").write_bytes(data)
    (finds / f"find-{number}.txt").write_text(traceback.format_exc(), encoding="utf-8")
    print(traceback.format_exc().strip().splitlines()[-1])


def main() -> int:
    """Read the words of the command and run."""
    words = argparse.ArgumentParser(description=__doc__)
    words.add_argument("--seconds", type=float, default=180)
    words.add_argument("--seed", type=int, default=20260302)
    words.add_argument("--finds", type=Path, default=ROOT / "out/fuzz_import")
    said = words.parse_args()
    return 1 if fuzz(said.seconds, said.seed, said.finds) else 0


if __name__ == "__main__":
    sys.exit(main())
