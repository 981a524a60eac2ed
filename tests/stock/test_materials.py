"""materials.yaml: every key, what is assumed for those that are absent, and every mistake with its whole message."""

from pathlib import Path

import pytest

from sourcing.cli.reading import read_all
from sourcing.files.findings import Mistakes
from sourcing.materials.model import Material
from sourcing.materials.strength import nominal_wire_diameters_mm, tensile_strength_mpa
from sourcing.need.reading import read_need
from sourcing.stock.model import Catalogue
from sourcing.stock.reading import inspect_catalogue, read_catalogue, read_springs
from tests.files.told import mistakes_of, told, written

WHOLE = """
materials:
  - name: Telegraph bronze
    shear_modulus: 41 GPa
    elastic_modulus: 105 GPa
    density: 8800
    tensile_strength: [{up_to: 0.5 mm, least: 950 MPa}, {up_to: MWG 20, least: 900}]
    service_temperature: {low: -40 degC, high: 212 degF}
    corrosion: {indoor-dry: 3, damp: 2}
    stress_relief: {low: 177, high: 200, minutes: 30}
    springback: {flow_ratio: 1.05, doubt: 8 %}
    note: drawn out of old telegraph lines
"""
LEAST = "{name: Telegraph bronze, shear_modulus: 41 GPa, elastic_modulus: 105 GPa, density: 8800%s}"
SPRING = """
springs:
  - {id: T-1, kind: compression, wire_diameter: 0.5, outside_diameter: 5, free_length: 12, total_coils: 8, ends: closed,
     material: %s, on_hand: 2}
"""


def catalogue(folder: Path, text: str) -> Catalogue:
    written(folder, text, "materials.yaml")
    written(folder, "spools: []\n", "spools/spools.yaml")
    return read_catalogue(folder)


def own(folder: Path, text: str) -> Material:
    material = catalogue(folder, text).materials["telegraph bronze"]
    assert material is not None
    return material


def mistakes(folder: Path, text: str) -> list[str]:
    written(folder, text, "materials.yaml")
    written(folder, "spools: []\n", "spools/spools.yaml")
    return [line.removeprefix("materials.yaml:") for line in told(mistakes_of(read_catalogue, folder))]


def test_all_keys_of_a_material(tmp_path: Path) -> None:
    wire = own(tmp_path, WHOLE)
    assert (wire.name, wire.standard) == ("Telegraph bronze", "")
    assert (wire.shear_modulus_mpa, wire.elastic_modulus_mpa, wire.density_kg_per_m3) == (41000, 105000, 8800)
    assert (wire.service_low_c, wire.service_high_c) == pytest.approx((-40, 100))
    assert wire.corrosion == {"indoor-dry": 3, "damp": 2}
    assert (wire.stress_relief_low_c, wire.stress_relief_high_c, wire.stress_relief_minutes) == (177, 200, 30)
    assert (wire.flow_ratio, wire.flow_ratio_sd) == (1.05, 0.08)
    assert wire.remark == "drawn out of old telegraph lines"


def test_its_strength_holds_up_to_each_diameter_and_is_not_known_above_the_last(tmp_path: Path) -> None:
    wire = own(tmp_path, WHOLE)
    assert [tensile_strength_mpa(wire, mm) for mm in (0.1, 0.5, 0.6, 1.143, 1.2)] == [950, 950, 900, 900, None]
    assert nominal_wire_diameters_mm(wire) == (0.5, 1.143)


def test_what_is_absent_is_not_known_and_its_springback_is_assumed(tmp_path: Path) -> None:
    wire = own(tmp_path, f"materials:\n  - {LEAST % ''}\n")
    assert tensile_strength_mpa(wire, 0.5) is None
    assert wire.service_low_c is wire.service_high_c is wire.stress_relief_low_c is wire.remark is None
    assert wire.corrosion == {}
    assert (wire.flow_ratio, wire.flow_ratio_sd) == (1.0, 0.10)
    assert (wire.heat_change_low, wire.heat_change_high) == (-0.01, 0.01)


@pytest.mark.parametrize("text", ["# none yet\n", "materials: []\n"])
def test_a_file_may_hold_no_materials(tmp_path: Path, text: str) -> None:
    assert catalogue(tmp_path, text).materials == {}


MISTAKES = {
    "a name that is known": (
        LEAST.replace("Telegraph bronze", "Music-Wire") % "",
        "2:12: “music-wire” is a material that is known already; expected a name of its own: the known figures are not "
        "replaced",
    ),
    "a standard's name": (
        LEAST.replace("Telegraph bronze", "ASTM  a228") % "",
        "2:12: “ASTM A228” is a material that is known already; expected a name of its own: the known figures are not "
        "replaced",
    ),
    "a missing key": (
        "{name: x, shear_modulus: 41 GPa, density: 8800}",
        "2:5: no elastic_modulus; expected the key elastic_modulus with a modulus, as in 105 GPa",
    ),
    "an unknown key": (
        LEAST % ", tensile_strenght: 900",
        "2:94: “tensile_strenght” is no key of a material; expected one of its keys; did you mean tensile_strength?",
    ),
    "a modulus in the wrong unit": (
        LEAST.replace("41 GPa", "41") % "",
        "2:45: 41 is nothing that a spring wire has; expected 10 to 100 GPa, as in 41 GPa; a bare number is in MPa",
    ),
    "moduli changed for each other": (
        LEAST.replace("41 GPa", "60 GPa") % "",
        "2:45: 60 GPa, where elastic_modulus is 105 GPa; expected a shear modulus below half of that, 52500 MPa",
    ),
    "a density in the wrong unit": (
        LEAST.replace("8800", "8.8") % "",
        "2:88: 8.8 is nothing that a spring wire has; expected 1000 to 25000, in kg a cubic metre, as in 8800",
    ),
    "a density with its unit": (
        LEAST.replace("8800", "8800 kg/m3") % "",
        "2:88: “kg/m3” stands after 8800; expected a number without a unit; did you mean 8800?",
    ),
    "a strength that is no list": (
        LEAST % ", tensile_strength: 900 MPa",
        "2:112: “900 MPa” stands here; expected a list of strengths, as in [{up_to: 0.5 mm, least: 950 MPa}]",
    ),
    "a strength of no wire": (
        LEAST % ", tensile_strength: [{up_to: 0.5, least: 95}]",
        "2:133: 95 is nothing that a spring wire has; expected 100 to 4000 MPa, as in 900 MPa; a bare number is in MPa",
    ),
    "a strength without its diameter": (
        LEAST % ", tensile_strength: [{least: 950}]",
        "2:113: no up_to; expected the key up_to with a wire diameter, as in 0.8 mm or MWG 20",
    ),
    "a gauge that does not exist": (
        LEAST % ", tensile_strength: [{up_to: MWG 99, least: 950}]",
        "2:121: there is no MWG 99; expected a gauge from MWG 10/0 to MWG 45; did you mean MWG 45?",
    ),
    "diameters out of order": (
        LEAST % ", tensile_strength: [{up_to: 1 mm, least: 900}, {up_to: 0.5 mm, least: 950}]",
        "2:148: 0.5 mm after 1.00 mm; expected each diameter once, the thinnest first",
    ),
    "a diameter twice": (
        LEAST % ", tensile_strength: [{up_to: 1 mm, least: 900}, {up_to: 1, least: 950}]",
        "2:148: 1 after 1.00 mm; expected each diameter once, the thinnest first",
    ),
    "temperatures upside down": (
        LEAST % ", service_temperature: {low: 120, high: -40}",
        "2:132: -40; expected a temperature of 120 °C or more, as low says",
    ),
    "heat without its minutes": (
        LEAST % ", stress_relief: {low: 177, high: 200}",
        "2:109: no minutes; expected the key minutes with a number above zero",
    ),
    "heat upside down": (
        LEAST % ", stress_relief: {low: 200, high: 177, minutes: 30}",
        "2:126: 177; expected a temperature of 200 °C or more, as low says",
    ),
    "a rating of four": (
        LEAST % ", corrosion: {damp: 4}",
        "2:112: “4” is no rating; expected 0, 1, 2 or 3",
    ),
    "surroundings nobody knows": (
        LEAST % ", corrosion: {dampp: 2}",
        "2:106: “dampp” is no word for surroundings; expected indoor-dry, damp, wet, salt or food; did you mean damp?",
    ),
    "a doubt above all measure": (
        LEAST % ", springback: {flow_ratio: 1, doubt: 80 %}",
        "2:129: 80 % is nothing that a spring wire has; expected 0.5 to 50 %, as in 10 %",
    ),
    "a flow ratio in MPa": (
        LEAST % ", springback: {flow_ratio: 900, doubt: 10 %}",
        "2:119: 900 is nothing that a spring wire has; expected 0.3 to 3, the flow stress over the least tensile "
        "strength",
    ),
}


@pytest.mark.parametrize(("text", "expected"), MISTAKES.values(), ids=MISTAKES)
def test_a_mistake_is_told_at_its_place(tmp_path: Path, text: str, expected: str) -> None:
    assert mistakes(tmp_path, f"materials:\n  - {text}\n") == [expected]


def test_a_name_stands_once_in_whatever_case(tmp_path: Path) -> None:
    twice = f"materials:\n  - {LEAST % ''}\n  - {LEAST.replace('Telegraph bronze', 'telegraph  BRONZE') % ''}\n"
    (line,) = mistakes(tmp_path, twice)
    assert line.startswith("3:12: “telegraph bronze” is the name of another material, at ")
    assert line.endswith("materials.yaml:2:12; expected a name of its own")


def test_a_need_a_spring_and_a_spool_may_name_it(tmp_path: Path) -> None:
    written(tmp_path, SPRING % "telegraph bronze", "springs/drawer.yaml")
    written(tmp_path, WHOLE, "materials.yaml")
    written(tmp_path, "spools:\n  - {id: W, material: TELEGRAPH  BRONZE, wire_diameter: 1}\n", "spools/spools.yaml")
    need = written(tmp_path, "job: x\nkind: compression\nfree_length: 12\nmaterial: telegraph bronze\n", "need.yaml")
    found = read_catalogue(tmp_path)
    (stock,), (spool,) = found.springs, found.spools
    assert stock.spring.material is spool.material is read_need(need, found.materials).material
    assert (stock.spring.shear_modulus_mpa, stock.spring.tensile_strength_mpa) == (41000, 950)


@pytest.mark.parametrize("file", ["springs/drawer.yaml", "drawer.yaml"])
def test_one_file_knows_the_materials_beside_it_and_those_in_the_folder_above(tmp_path: Path, file: str) -> None:
    written(tmp_path, WHOLE, "materials.yaml")
    path = written(tmp_path, SPRING % "telegraph bronze", file)
    for springs in (read_springs(path)[0], read_catalogue(path).springs):
        assert springs[0].spring.material.name == "Telegraph bronze"


def test_without_it_a_spring_that_names_it_is_a_mistake_that_lists_what_is_known(tmp_path: Path) -> None:
    written(tmp_path, f"materials:\n  - {LEAST % ''}\n", "materials.yaml")
    (line,) = told(mistakes_of(read_catalogue, written(tmp_path, SPRING % "telegraf bronze")))
    assert line.startswith("3:16: “telegraf bronze” is no material that is known; expected music-wire, ")
    assert ", Telegraph bronze or a standard's own name" in line
    assert line.endswith("did you mean Telegraph bronze?")


def test_a_material_with_a_mistake_is_told_once_and_not_again_where_it_is_named(tmp_path: Path) -> None:
    written(tmp_path, f"materials:\n  - {LEAST.replace('8800', '8.8') % ''}\n", "materials.yaml")
    written(tmp_path, SPRING % "telegraph bronze", "springs/drawer.yaml")
    found, mistakes = inspect_catalogue(tmp_path)
    assert [finding.place.file for finding in mistakes] == [str(tmp_path / "materials.yaml")]
    need = written(tmp_path, "job: x\nkind: compression\nfree_length: 12\nmaterial: telegraph bronze\n", "need.yaml")
    assert read_need(need, found.materials).material is None


def test_a_file_of_materials_alone_is_no_catalogue(tmp_path: Path) -> None:
    (line,) = told(mistakes_of(read_catalogue, written(tmp_path, WHOLE, "materials.yaml")))
    assert line == "1:1: a file of materials; expected the folder it lies in, or springs: or spools:"


def test_a_materials_file_that_is_no_yaml_stops_the_catalogue(tmp_path: Path) -> None:
    with pytest.raises(Mistakes):
        catalogue(tmp_path, "materials: [*a]\n")


def test_a_command_reads_the_materials_before_the_need_that_names_one(tmp_path: Path) -> None:
    written(tmp_path, SPRING % "telegraph bronze", "springs/drawer.yaml")
    written(tmp_path, WHOLE, "materials.yaml")
    need = written(tmp_path, "job: x\nkind: compression\nfree_length: 12\nmaterial: telegraph bronze\n", "need.yaml")
    ((read, found),) = read_all([str(need)], str(tmp_path))
    assert read.material == found.springs[0].spring.material


def test_the_mistakes_of_the_need_are_told_before_those_of_the_catalogue(tmp_path: Path) -> None:
    written(tmp_path, f"materials:\n  - {LEAST.replace('8800', '8.8') % ''}\n", "materials.yaml")
    written(tmp_path, "spools: []\n", "spools/spools.yaml")
    need = written(tmp_path, "job: x\nkind: compression\nfree_length: yes\nmaterial: telegraph bronze\n", "need.yaml")
    with pytest.raises(Mistakes) as raised:
        read_all([str(need)], str(tmp_path))
    files = [Path(finding.place.file or "").name for finding in raised.value.findings]
    assert files == ["need.yaml", "materials.yaml"]
