"""A formula as a person writes it, "G d⁴ / (8 D³ n)": worked out, and shown with its numbers put in.

What stands side by side is multiplied, and that binds no closer than a multiplication that is written: a product under
a stroke stands in brackets. Known are + − · / ( ) , raised digits, ^, √(..), π and the functions of FUNCTIONS.
A formula of several pieces says where each holds: "x for x ≤ 1; 1/x otherwise".
"""

from __future__ import annotations

import math
import operator
import re
from collections.abc import Callable, Iterator, Mapping

FUNCTIONS: Mapping[str, Callable[..., float]] = {
    "√": math.sqrt,
    "abs": math.fabs,
    "exp": math.exp,
    "ln": math.log,
    "lg": math.log10,
    "sin": math.sin,
    "cos": math.cos,
    "tan": math.tan,
    "asin": math.asin,
    "atan": math.atan,
    "asinh": math.asinh,
    "min": min,
    "max": max,
}
_CONSTANTS = {"π": math.pi}
_RAISED = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹⁻", "0123456789-")
_OPERATORS = {"−": "-", "·": "*", "^": "**"}
_COMPARED: Mapping[str, Callable[[float, float], bool]] = {
    "≤": operator.le,
    "≥": operator.ge,
    "<": operator.lt,
    ">": operator.gt,
}
_TOKEN = re.compile(
    r"\s*(?P<number>\d+(?:\.\d+)?)|\s*(?P<raised>[⁰¹²³⁴⁵⁶⁷⁸⁹⁻]+)|\s*(?P<root>√)"
    r"|\s*(?P<name>[^\W\d_⁰¹²³⁴⁵⁶⁷⁸⁹](?:[^\W⁰¹²³⁴⁵⁶⁷⁸⁹]|')*)|\s*(?P<sign>[-+−·*/^(),])"
)
_CONDITION = re.compile(f"(.+)([{''.join(_COMPARED)}])(.+)")


def evaluate(expression: str, values: Mapping[str, float]) -> float:
    """The value of an expression, of several pieces the one that holds.

    Raises KeyError for a symbol without a value, ValueError for what is no formula or has no value (√ of less than 0).

    >>> round(evaluate("G d⁴ / (8 D³ n)", {"G": 81500, "d": 1, "D": 12, "n": 6}), 4)
    0.9826
    >>> evaluate("√(a² + 3^2) − 1", {"a": 4})
    4.0
    >>> evaluate("x for x ≤ 1; 1/x otherwise", {"x": 4})
    0.25
    """
    code = "".join(_python(piece_that_holds(expression, values), values))
    return float(eval(compile(code, "<formula>", "eval"), {"__builtins__": {}}, {**FUNCTIONS, "root": math.sqrt}))


def piece_that_holds(expression: str, values: Mapping[str, float]) -> str:
    """The piece of an expression that holds for these values; the whole of one that is in one piece.

    >>> piece_that_holds("x for x ≤ 1; 1/x otherwise", {"x": 4})
    '1/x'
    """
    for piece, condition in _pieces(expression):
        if condition is None or _holds(condition, values):
            return piece
    raise ValueError(f"no piece of {expression!r} holds for {values}")


def symbols_in(expression: str) -> tuple[str, ...]:
    """The symbols of an expression in the order in which they stand, each once.

    >>> symbols_in("G d⁴ / (8 D³ n) + √(d) · π")
    ('G', 'd', 'D', 'n')
    >>> symbols_in("x for y ≤ 1; 1/x otherwise")
    ('x', 'y')
    """
    texts = [
        text
        for piece, condition in _pieces(expression)
        for text in (piece, *(() if condition is None else _condition(condition)[::2]))
    ]
    names = [token for text in texts for kind, token in _tokens(text) if kind == "name"]
    return tuple(dict.fromkeys(name for name in names if name not in FUNCTIONS and name not in _CONSTANTS))


def with_numbers(expression: str, shown: Mapping[str, str]) -> str:
    """The expression, in one piece, with a text in the place of each symbol and a dot where factors would run together.

    >>> with_numbers("G d⁴ / (8 D³ n)", {"G": "81500", "d": "1", "D": "12", "n": "6"})
    '81500 · 1⁴ / (8 · 12³ · 6)'
    """
    text, factor = "", False
    for kind, token in _tokens(expression):
        operand = kind in ("number", "name", "root") or token == "("
        if operand and factor:
            text += " · "
        if kind == "sign" and token in "+−-*/·":
            text += f" {token} " if text and not text.endswith("(") else token
        elif kind == "sign" and token == ",":
            text += ", "
        else:
            written = shown.get(token, token) if kind == "name" else token
            text += f"({written})" if written.startswith(("-", "−")) else written
        factor = _ends_a_factor(kind, token)
    return text


def _pieces(expression: str) -> Iterator[tuple[str, str | None]]:
    """Each piece with its condition; None where it holds otherwise."""
    for text in expression.split("; "):
        piece, _, condition = text.partition(" for ")
        yield piece.removesuffix(" otherwise"), condition or None


def _condition(condition: str) -> tuple[str, str, str]:
    found = _CONDITION.fullmatch(condition)
    if found is None:
        raise ValueError(f"{condition!r} compares nothing")
    return found[1], found[2], found[3]


def _holds(condition: str, values: Mapping[str, float]) -> bool:
    left, sign, right = _condition(condition)
    return _COMPARED[sign](evaluate(left, values), evaluate(right, values))


def _ends_a_factor(kind: str, token: str) -> bool:
    return kind in ("number", "raised") or (kind == "name" and token not in FUNCTIONS) or token == ")"


def _python(expression: str, values: Mapping[str, float]) -> Iterator[str]:
    factor = False
    for kind, token in _tokens(expression):
        if factor and (kind in ("number", "name", "root") or token == "("):
            yield "*"
        factor = _ends_a_factor(kind, token)
        if kind == "raised":
            yield f"**({token.translate(_RAISED)})"
        elif kind == "name" and token not in FUNCTIONS:
            yield f"({_CONSTANTS[token] if token in _CONSTANTS else float(values[token])!r})"
        else:
            yield "root" if kind == "root" else _OPERATORS.get(token, token)


def _tokens(expression: str) -> Iterator[tuple[str, str]]:
    """Raises ValueError at the first character that is part of no formula."""
    text, place = expression.rstrip(), 0
    while place < len(text):
        found = _TOKEN.match(text, place)
        if found is None or found.lastgroup is None:
            raise ValueError(f"{text[place:]!r} is part of no formula")
        yield found.lastgroup, found[found.lastgroup]
        place = found.end()
