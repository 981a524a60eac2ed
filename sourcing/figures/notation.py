"""A formula as a person writes it, "G d⁴ / (8 D³ n)": worked out, and shown with its numbers put in.

What stands side by side is multiplied, and that binds no closer than a multiplication that is written: a product under
a stroke stands in brackets. Known are + − · / ( ) , raised digits, ^, √(..), π and the functions of FUNCTIONS.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Iterator, Mapping

FUNCTIONS: Mapping[str, Callable[..., float]] = {
    "√": math.sqrt,
    "exp": math.exp,
    "ln": math.log,
    "lg": math.log10,
    "sin": math.sin,
    "cos": math.cos,
    "tan": math.tan,
    "atan": math.atan,
    "min": min,
    "max": max,
}
_CONSTANTS = {"π": math.pi}
_RAISED = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹⁻·", "0123456789-.")
_OPERATORS = {"−": "-", "·": "*", "^": "**"}
_TOKEN = re.compile(
    r"\s*(?P<number>\d+(?:\.\d+)?)|\s*(?P<raised>[⁰¹²³⁴⁵⁶⁷⁸⁹⁻]+)|\s*(?P<root>√)"
    r"|\s*(?P<name>[^\W\d_⁰¹²³⁴⁵⁶⁷⁸⁹](?:[^\W⁰¹²³⁴⁵⁶⁷⁸⁹]|')*)|\s*(?P<sign>[-+−·*/^(),])"
)


def evaluate(expression: str, values: Mapping[str, float]) -> float:
    """The value of an expression. Raises KeyError for a symbol without a value, ValueError for what is no formula.

    >>> round(evaluate("G d⁴ / (8 D³ n)", {"G": 81500, "d": 1, "D": 12, "n": 6}), 4)
    0.9826
    >>> evaluate("√(a² + 3^2) − 1", {"a": 4})
    4.0
    """
    code = "".join(_python(expression, values))
    return float(eval(compile(code, "<formula>", "eval"), {"__builtins__": {}}, {**FUNCTIONS, "root": math.sqrt}))


def symbols_in(expression: str) -> tuple[str, ...]:
    """The symbols of an expression in the order in which they stand, each once.

    >>> symbols_in("G d⁴ / (8 D³ n) + √(d) · π")
    ('G', 'd', 'D', 'n')
    """
    names = [text for kind, text in _tokens(expression) if kind == "name"]
    return tuple(dict.fromkeys(name for name in names if name not in FUNCTIONS and name not in _CONSTANTS))


def with_numbers(expression: str, shown: Mapping[str, str]) -> str:
    """The expression with a text in the place of each symbol, and a dot where two factors would run together.

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
        factor = kind in ("number", "raised") or (kind == "name" and token not in FUNCTIONS) or token == ")"
    return text


def _python(expression: str, values: Mapping[str, float]) -> Iterator[str]:
    factor = False
    for kind, token in _tokens(expression):
        if factor and (kind in ("number", "name", "root") or token == "("):
            yield "*"
        factor = kind in ("number", "raised") or (kind == "name" and token not in FUNCTIONS) or token == ")"
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
