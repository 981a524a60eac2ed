"""Invented catalogues of any size, their springs consistent: a rate is that of the dimensions, as a list rounds it."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from random import Random

from sourcing.springs.compression import rate_n_per_mm

Record = dict[str, str | float | int]

WIRES_MM = (0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1.0, 1.2, 1.4, 1.6, 2.0)
MUSIC_WIRE_MPA = 81_500.0


def spring_records(count: int, seed: int = 1) -> Iterator[Record]:
    """So many compression springs of music wire, index 5 to 14, half of them in the drawer, half on a list."""
    random = Random(seed)
    for number in range(count):
        wire = random.choice(WIRES_MM)
        mean = round(wire * random.uniform(5.0, 14.0), 1)
        active = random.randrange(16, 80) / 4
        solid = wire * (active + 2.0)
        rate = rate_n_per_mm(wire, mean, active, MUSIC_WIRE_MPA)
        yield {
            "id": f"R-{number:06}",
            "kind": "compression",
            "wire_diameter": wire,
            "outside_diameter": round(mean + wire, 1),
            "free_length": round(solid * random.uniform(1.4, 3.0), 1),
            "total_coils": active + 2.0,
            "ends": random.choice(("closed", "closed-ground")),
            "material": "music-wire",
            "rate": float(f"{rate:.3g}"),
            **_shelf(random),
        }


def _shelf(random: Random) -> Record:
    if random.random() < 0.5:
        return {"on_hand": random.randrange(6), "place": f"drawer {random.randrange(40)}"}
    return {"seller": "an invented list", "price": f"{random.uniform(0.2, 2.0):.2f} EUR", "pack": 10, "lead_days": 4}


def as_yaml(record: Record) -> str:
    """The record in block form, as a keeper writes it."""
    first, *rest = (f"{key}: {value}" for key, value in record.items())
    return "\n".join((f"  - {first}", *(f"    {line}" for line in rest), ""))


def write_catalogue(folder: Path, count: int, files: int = 4) -> list[Record]:
    """A catalogue folder with so many springs, spread over files, and one spool. Returns the records."""
    records = list(spring_records(count))
    (folder / "springs").mkdir(parents=True)
    (folder / "spools").mkdir()
    for number in range(files):
        text = "springs:\n" + "".join(map(as_yaml, records[number::files]))
        (folder / "springs" / f"list-{number}.yaml").write_text(text, encoding="utf-8")
    spool = "spools:\n  - {id: W08, material: music-wire, wire_diameter: 0.8, length_left: 6 m}\n"
    (folder / "spools" / "wire.yaml").write_text(spool, encoding="utf-8")
    return records
