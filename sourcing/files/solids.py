"""Solids as files: binary STL, and 3MF after the 3MF Core Specification (version 1.3). Lengths are in millimetres.

The same solid always gives the same bytes. STL knows no units; its readers take millimetres.
"""

from __future__ import annotations

import io
import struct
import zipfile
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from xml.sax.saxutils import escape

Vertex = tuple[float, float, float]
Triangle = tuple[int, int, int]

_STL_HEADER = 80
_NAMESPACE = "http://schemas.microsoft.com/3dmanufacturing/core/2015/02"
_PACKAGE = "http://schemas.openxmlformats.org/package/2006"
_TYPES = f"""\
<?xml version="1.0" encoding="UTF-8"?>
<Types xmlns="{_PACKAGE}/content-types">
<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>
<Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/>
</Types>
"""
_RELATIONS = f"""\
<?xml version="1.0" encoding="UTF-8"?>
<Relationships xmlns="{_PACKAGE}/relationships">
<Relationship Target="/3D/3dmodel.model" Id="rel0" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/>
</Relationships>
"""
_LONG_AGO = (1980, 1, 1, 0, 0, 0)


@dataclass(frozen=True, slots=True)
class Part:
    """A closed surface: points in mm, and triangles whose corners go anticlockwise seen from outside."""

    vertices: Sequence[Vertex]
    triangles: Sequence[Triangle]


def stl_of(parts: Sequence[Part]) -> bytes:
    """Binary STL, all parts in one list of facets. The header must not begin with "solid", which marks a text file."""
    count = sum(len(part.triangles) for part in parts)
    head = b"mandrel, millimetres".ljust(_STL_HEADER, b" ") + struct.pack("<I", count)
    return head + b"".join(facet for part in parts for facet in _facets(part))


def _facets(part: Part) -> Iterator[bytes]:
    pack, points = struct.Struct("<12fH").pack, part.vertices
    for one, two, three in part.triangles:
        (ax, ay, az), (bx, by, bz), (cx, cy, cz) = points[one], points[two], points[three]
        ux, uy, uz, vx, vy, vz = bx - ax, by - ay, bz - az, cx - ax, cy - ay, cz - az
        nx, ny, nz = uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx
        size = (nx * nx + ny * ny + nz * nz) ** 0.5 or 1.0
        yield pack(nx / size, ny / size, nz / size, ax, ay, az, bx, by, bz, cx, cy, cz, 0)


def threemf_of(parts: Sequence[Part], title: str) -> bytes:
    """A 3MF package, one object a part."""
    stream = io.BytesIO()
    with zipfile.ZipFile(stream, "w", zipfile.ZIP_DEFLATED) as package:
        for name, text in (
            ("[Content_Types].xml", _TYPES),
            ("_rels/.rels", _RELATIONS),
            ("3D/3dmodel.model", "".join(_model(parts, title))),
        ):
            entry = zipfile.ZipInfo(name, _LONG_AGO)
            entry.compress_type = zipfile.ZIP_DEFLATED
            package.writestr(entry, text.encode())
    return stream.getvalue()


def _model(parts: Sequence[Part], title: str) -> Iterator[str]:
    readable = "".join(each for each in title if each.isprintable())
    yield '<?xml version="1.0" encoding="UTF-8"?>\n'
    yield f'<model unit="millimeter" xml:lang="en" xmlns="{_NAMESPACE}">\n'
    yield f'<metadata name="Title">{escape(readable)}</metadata>\n<resources>\n'
    for number, part in enumerate(parts, 1):
        yield f'<object id="{number}" type="model"><mesh><vertices>\n'
        yield from (f'<vertex x="{x:.5f}" y="{y:.5f}" z="{z:.5f}"/>\n' for x, y, z in part.vertices)
        yield "</vertices><triangles>\n"
        yield from (f'<triangle v1="{a}" v2="{b}" v3="{c}"/>\n' for a, b, c in part.triangles)
        yield "</triangles></mesh></object>\n"
    yield "</resources>\n<build>\n"
    yield from (f'<item objectid="{number}"/>\n' for number in range(1, len(parts) + 1))
    yield "</build>\n</model>\n"
