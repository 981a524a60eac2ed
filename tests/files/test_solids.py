"""The files of solids, by their own specifications."""

from __future__ import annotations

import io
import struct
import zipfile
from xml.etree import ElementTree

from sourcing.files.solids import Part, stl_of, threemf_of

TETRAHEDRON = Part(
    ((0.0, 0.0, 0.0), (1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0)), ((0, 2, 1), (0, 1, 3), (0, 3, 2), (1, 2, 3))
)
CORE = "{http://schemas.microsoft.com/3dmanufacturing/core/2015/02}"


def model(title: str) -> ElementTree.Element:
    with zipfile.ZipFile(io.BytesIO(threemf_of([TETRAHEDRON, TETRAHEDRON], title))) as package:
        assert package.testzip() is None
        return ElementTree.fromstring(package.read("3D/3dmodel.model"))


def test_binary_stl_is_a_header_of_80_bytes_a_count_and_50_bytes_a_facet() -> None:
    content = stl_of([TETRAHEDRON, TETRAHEDRON])
    assert struct.unpack_from("<I", content, 80) == (8,)
    assert len(content) == 84 + 8 * 50
    assert not content.startswith(b"solid")


def test_the_normal_of_a_facet_looks_outwards() -> None:
    content = stl_of([TETRAHEDRON])
    assert struct.unpack_from("<3f", content, 84) == (0.0, 0.0, -1.0)


def test_a_3mf_package_names_its_types_and_leads_to_its_model() -> None:
    """3MF Core Specification 1.3, chapters 2 and 3; Open Packaging Conventions."""
    with zipfile.ZipFile(io.BytesIO(threemf_of([TETRAHEDRON], "job"))) as package:
        assert package.namelist() == ["[Content_Types].xml", "_rels/.rels", "3D/3dmodel.model"]
        types, relations = (ElementTree.fromstring(package.read(name)) for name in package.namelist()[:2])
    assert {each.get("Extension") for each in types} == {"rels", "model"}
    assert [each.get("Target") for each in relations] == ["/3D/3dmodel.model"]


def test_the_model_is_in_millimetres_and_builds_each_of_its_objects() -> None:
    root = model("job")
    assert root.get("unit") == "millimeter"
    objects = [each.get("id") for each in root.iter(f"{CORE}object")]
    assert objects == [each.get("objectid") for each in root.iter(f"{CORE}item")] == ["1", "2"]
    assert len(list(root.iter(f"{CORE}vertex"))) == 8


def test_a_title_of_markup_is_only_words() -> None:
    title = '</metadata><object id="9"/>&amp;'
    assert model(title).findtext(f"{CORE}metadata") == title
    assert model("a\x07b").findtext(f"{CORE}metadata") == "ab"


def test_the_same_solid_gives_the_same_bytes() -> None:
    assert threemf_of([TETRAHEDRON], "job") == threemf_of([TETRAHEDRON], "job")
