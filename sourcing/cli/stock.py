"""`springwright stock`: the drawer and the spools asked, counted and checked."""

from __future__ import annotations

import re
import sys
from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import TYPE_CHECKING, Annotated

import typer

from sourcing.cli import door
from sourcing.files.findings import Finding, Mistakes, Place, WrongWords, in_order, quoted
from sourcing.quantities import (
    QuantityError,
    Wanted,
    wanted_angular_rate_n_mm_per_deg,
    wanted_length_mm,
    wanted_rate_n_per_mm,
    wanted_wire_diameter_mm,
)

if TYPE_CHECKING:
    from sourcing.stock.counting import Count
    from sourcing.stock.model import Bench, Catalogue, Spool, StockSpring
    from sourcing.stock.searching import Asked, Range

app = typer.Typer(
    help="Ask the drawer and the spools, count what is taken and put back, check the files.\n\n"
    "Example: springwright stock find 0.9 drawer B4",
    no_args_is_help=True,
    rich_markup_mode=None,
)

Catalog = Annotated[
    str | None, typer.Option("--catalog", metavar="PATH", help="a catalogue folder, or one file of springs or spools")
]
AsJson = Annotated[bool, typer.Option("--json", help="one JSON document instead of text")]
DryRun = Annotated[bool, typer.Option("--dry-run", help="show what would change, and change nothing")]
Id = Annotated[str, typer.Argument(metavar="ID", help="the id of a spring or a spool")]
Amount = Annotated[str, typer.Argument(metavar="N", help="how many springs, or a length of wire such as 0.3m")]

Stock = tuple[tuple["StockSpring", ...], tuple["Spool", ...]]


def read(catalog: str | None) -> Catalogue:
    """The catalogue; doubts about it go to standard error. Raises Mistakes."""
    from sourcing.stock.index.shelf import open_shelf
    from sourcing.stock.reading import find_catalogue

    shelf, mistakes = open_shelf(find_catalogue(catalog))
    if mistakes:
        raise Mistakes(mistakes)
    catalogue = shelf.whole()
    door.tell_warnings(catalogue.warnings)
    return catalogue


def listed(catalogue: Catalogue, asked: Asked, order: str | None, falling: bool) -> Stock:
    """The springs and spools that are all that is asked for, in the order of the files or the one that is named."""
    from sourcing.stock import searching

    springs, spools = searching.springs_asked(catalogue, asked), searching.spools_asked(catalogue, asked)
    if order is None:
        return springs, spools
    return searching.sorted_springs(springs, order, falling), searching.sorted_spools(spools, order, falling)


def found(catalogue: Catalogue, words: str) -> Stock:
    """The springs and spools that words find, best first."""
    from sourcing.stock.model import Spool, StockSpring
    from sourcing.stock.words import found_by_words

    things = found_by_words(words, catalogue)
    return (
        tuple(thing for thing in things if isinstance(thing, StockSpring)),
        tuple(thing for thing in things if isinstance(thing, Spool)),
    )


def asked_for(
    bench: Bench,
    kind: str | None,
    figures: Mapping[str, str | None],
    words: Mapping[str, str | None],
    order: str | None,
) -> Asked:
    """What options ask for. Raises WrongWords with all that is wrong with them, the order among it."""
    from sourcing.need.kinds import KINDS
    from sourcing.stock.adding import SPOOL
    from sourcing.stock.searching import SPRING_ORDERS, Asked, closed_range

    parsers = {
        "wire": wanted_wire_diameter_mm,
        "rate": wanted_rate_n_per_mm,
        "angular rate": wanted_angular_rate_n_mm_per_deg,
    }
    wrong = [*_no_choice("--kind", kind, (*KINDS, SPOOL)), *_no_choice("--sort", order, tuple(SPRING_ORDERS))]
    ranges: dict[str, Range] = {}
    for figure, text in _rates_apart(figures, kind):
        if text is not None and (wanted := _wanted(figure, text, parsers.get(figure, wanted_length_mm), wrong)):
            ranges[figure] = closed_range(figure, wanted, bench)
    if wrong:
        raise WrongWords(tuple(wrong))
    return Asked(kind, ranges, {name: word for name, word in words.items() if word is not None})


def _rates_apart(figures: Mapping[str, str | None], kind: str | None) -> Iterator[tuple[str, str | None]]:
    """The figures, a rate by angle under its own name: of torsion springs, or where its unit says so."""
    for figure, text in figures.items():
        by_angle = text is not None and (kind == "torsion" or "/deg" in text or "/rad" in text)
        yield ("angular rate" if figure == "rate" and by_angle else figure), text


def _wanted(figure: str, text: str, parse: Callable[[str], Wanted], wrong: list[Finding]) -> Wanted | None:
    try:
        return parse(text)
    except QuantityError as error:
        wrong.append(Finding(Place(None), f"--{figure.split()[-1]}: {error.found}", error.expected, error.suggestions))
        return None


def _no_choice(option: str, word: str | None, choices: Sequence[str]) -> list[Finding]:
    if word is None or word in choices:
        return []
    from sourcing.files.nearest import nearest

    return [Finding(Place(None), f"{option}: {quoted(word)}", f"one of {', '.join(choices)}", nearest(word, choices))]


def given_keys(words: Sequence[str]) -> dict[str, str]:
    """The keys of a record from options: --wire-diameter 0.9, or --wire-diameter=0.9. Raises WrongWords."""
    given: dict[str, str] = {}
    rest = iter(words)
    for word in rest:
        option, is_there, value = word.partition("=")
        key = option.removeprefix("--").replace("-", "_")
        if not (option.startswith("--") and re.fullmatch("[a-z][a-z0-9_]*", key)):
            raise WrongWords((Finding(Place(None), quoted(word), "an option such as --wire-diameter 0.9"),))
        text = value if is_there else next(rest, None)
        if text is None or key in given:
            found = f"{option} {'without a value' if text is None else 'twice'}"
            raise WrongWords((Finding(Place(None), found, "each option once, with its value"),))
        given[key] = text
    return given


def ask_for_the_rest(given: Mapping[str, str], catalogue: Catalogue) -> dict[str, str]:
    """The record with what its keeper answers for each key that it lacks; a wrong answer is asked for again."""
    from sourcing.need.kinds import KINDS
    from sourcing.stock.adding import SPOOL, keys_to_ask, keys_to_offer

    record = dict(given)
    if "kind" not in record:
        record["kind"] = _answer("kind", record, catalogue, hint=f" ({', '.join((*KINDS, SPOOL))})")
    for key in keys_to_ask(record):
        record[key] = _answer(key, record, catalogue)
    for key in keys_to_offer(record):
        if answer := _answer(key, record, catalogue, hint=" (or nothing)", default=""):
            record[key] = answer
    return record


def _answer(
    key: str, record: Mapping[str, str], catalogue: Catalogue, hint: str = "", default: str | None = None
) -> str:
    from sourcing.sheets.text import finding_line
    from sourcing.stock.adding import as_read

    while True:
        answer = str(typer.prompt(key.replace("_", " ") + hint, default=default, show_default=False, err=True))
        read = {**record, key: answer}
        wrong = as_read(read, catalogue.bench.currency, catalogue.materials)[1].get(key) if answer else None
        if not wrong:
            return answer
        for finding in wrong:
            print(finding_line(finding), file=sys.stderr)


@app.command("list")
def list_command(
    kind: Annotated[str | None, typer.Option(help="compression, conical, extension, torsion or spool")] = None,
    wire: Annotated[str | None, typer.Option(help="wire diameter: 0.9, '0.8..1 mm', '<= 1 mm', 'MWG 20'")] = None,
    outside: Annotated[str | None, typer.Option(help="outside diameter, '8..10 mm'; a cone's large end")] = None,
    inside: Annotated[str | None, typer.Option(help="inside diameter, '>= 6 mm'; a cone's small end")] = None,
    length: Annotated[str | None, typer.Option(help="free length: 31, '31 mm +- 2 mm', '<= 30 mm'")] = None,
    rate: Annotated[str | None, typer.Option(help="rate: '1..2 N/mm', '>= 5 lbf/in', '4 N*mm/deg'")] = None,
    material: Annotated[str | None, typer.Option(help="a part of the material's name")] = None,
    place: Annotated[str | None, typer.Option(help="a part of the place's name")] = None,
    seller: Annotated[str | None, typer.Option(help="a part of the seller's name")] = None,
    sort: Annotated[
        str | None,
        typer.Option(help="id, kind, wire, outside, inside, length, rate, material, place, seller, on-hand or price"),
    ] = None,
    reverse: Annotated[bool, typer.Option("--reverse", help="sort from large to small")] = False,
    catalog: Catalog = None,
    as_json: AsJson = False,
) -> None:
    """List springs and spools, all of them or those that an option describes.

    A figure without a tolerance is meant to within that of your bench.yaml; a wire to 0.01 mm.

    Example: springwright stock list --wire "0.8..1 mm" --outside "<= 10 mm" --sort rate
    """
    catalogue = read(catalog)
    figures = {"wire": wire, "outside": outside, "inside": inside, "length": length, "rate": rate}
    words = {"material": material, "place": place, "seller": seller}
    asked = asked_for(catalogue.bench, kind, figures, words, sort)
    _print_stock(listed(catalogue, asked, sort, reverse), catalogue.bench.units, as_json)


@app.command("find")
def find_command(
    words: Annotated[list[str], typer.Argument(metavar="WORDS", help="words and figures, misspelt or in part too")],
    catalog: Catalog = None,
    as_json: AsJson = False,
) -> None:
    """Find springs and spools by words and figures; all of them must be found in a thing.

    Example: springwright stock find 0.9 drawer B4
    """
    catalogue = read(catalog)
    _print_stock(found(catalogue, " ".join(words)), catalogue.bench.units, as_json)


@app.command("low")
def low_command(catalog: Catalog = None, as_json: AsJson = False) -> None:
    """Tell of which springs fewer are on hand than the least that is wanted.

    Example: springwright stock low
    """
    from sourcing.stock.searching import running_low

    springs = running_low(read(catalog))
    if as_json:
        _print_stock((springs, ()), "mm", as_json)
    else:
        from sourcing.sheets.stock_text import low_lines

        door.print_text(low_lines(springs))


@app.command("take")
def take_command(
    name: Id, amount: Amount, dry_run: DryRun = False, catalog: Catalog = None, as_json: AsJson = False
) -> None:
    """Take springs, or wire from a spool: your file tells what is left.

    Example: springwright stock take T-17 1
    """
    from sourcing.stock.counting import take

    _print_count(take(read(catalog), name, amount, dry_run), dry_run, as_json)


@app.command("put")
def put_command(
    name: Id, amount: Amount, dry_run: DryRun = False, catalog: Catalog = None, as_json: AsJson = False
) -> None:
    """Put springs back, or wire on a spool: your file tells what there is.

    Example: springwright stock put T-17 2
    """
    from sourcing.stock.counting import put

    _print_count(put(read(catalog), name, amount, dry_run), dry_run, as_json)


@app.command("add", context_settings={"allow_extra_args": True, "ignore_unknown_options": True})
def add_command(
    context: typer.Context,
    to: Annotated[str | None, typer.Option(metavar="FILE", help="the file of the catalogue that it goes to")] = None,
    dry_run: DryRun = False,
    catalog: Catalog = None,
    as_json: AsJson = False,
) -> None:
    """Add a spring, or a spool (--kind spool).

    Every key of a record is an option: --id --kind --wire-diameter --outside-diameter --mean-diameter
    --inside-diameter (a cone's with -small and -large at the end) --free-length --total-coils --active-coils --ends
    --end-1 --end-2 ("tang-in, 4 mm, 90 deg") --material --hand (a torsion spring's --leg-1 --leg-2 --free-angle
    --bodies --body-length, an extension spring's --hooks --initial-tension --torn-hooks) --rate --grade
    --shear-modulus --elastic-modulus --tensile-strength --on-hand --least --place --seller --price --pack
    --lead-days --note; a spool's: --id --material --wire-diameter --length-left --price-per-metre --place --note.
    Without --id it takes the next free one. On a terminal, what is missing is asked for. Without --to it goes where
    its place or its seller stands already.

    Example: springwright stock add --kind compression --wire-diameter 0.9 --outside-diameter 9.6 --free-length 31
    --total-coils 9.75 --ends closed --material music-wire --on-hand 2 --place "drawer B4"
    """
    from sourcing.stock.adding import add

    given = given_keys(context.args)
    catalogue = read(catalog)
    record = ask_for_the_rest(given, catalogue) if sys.stdin.isatty() else given
    added = add(catalogue, record, to, dry_run)
    if as_json:
        from sourcing.sheets.stock_data import added_document

        door.print_json(added_document(added))
    else:
        from sourcing.sheets.stock_text import added_lines

        door.print_text(added_lines(added, dry_run))


@app.command("check")
def check_command(catalog: Catalog = None, as_json: AsJson = False) -> None:
    """Tell every mistake in the catalogue with the line it is on, and every doubt.

    Example: springwright stock check
    """
    mistakes, doubts = checked(catalog)
    if as_json:
        from sourcing.sheets.stock_data import check_document

        door.print_json(check_document(mistakes, doubts))
    else:
        from sourcing.sheets.stock_text import check_lines

        door.print_text(check_lines(mistakes, doubts))
    if mistakes:
        raise typer.Exit(1)


def checked(catalog: str | None) -> tuple[tuple[Finding, ...], tuple[Finding, ...]]:
    """Every mistake in a catalogue, and every doubt about what could be read of it."""
    from sourcing.stock.doubts import doubts
    from sourcing.stock.reading import find_catalogue, inspect_catalogue
    from sourcing.winding.trial_doubts import surprises

    catalogue, mistakes = inspect_catalogue(find_catalogue(catalog))
    return mistakes, in_order(doubts(catalogue), surprises(catalogue.spools, catalogue.bench.units))


def _print_stock(stock: Stock, units: str, as_json: bool) -> None:
    if as_json:
        from sourcing.sheets.stock_data import stock_document

        door.print_json(stock_document(*stock))
    else:
        from sourcing.sheets.stock_text import stock_lines

        door.print_text(stock_lines(*stock, units))


def _print_count(count: Count, dry_run: bool, as_json: bool) -> None:
    if as_json:
        from sourcing.sheets.stock_data import count_document

        door.print_json(count_document(count))
    else:
        from sourcing.sheets.stock_text import count_lines

        door.print_text(count_lines(count, dry_run))
