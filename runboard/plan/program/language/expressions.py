"""Real values: numbers, parameters, expressions in brackets and functions (NISTIR 6556, 3.3.2)."""

import math
import re
from collections.abc import Callable
from dataclasses import dataclass

from runboard.plan.program.language.doubts import LeftOut
from runboard.plan.program.language.limits import HIGHEST_PARAMETER, MOST_NESTED, NEAR_WHOLE
from runboard.run.refusal import Refused

_NUMBER = re.compile(r"[+-]?(?:[0-9]+\.?[0-9]*|\.[0-9]+)")
_NAME = re.compile(r"[a-z]+")
# The report's Table 5: powers first, then products, then the rest, each from left to right.
_OPERATION = re.compile(r"\*\*|[*/+-]|mod|xor|or|and|[a-z]+")
_RANKS = {"**": 3, "*": 2, "/": 2, "mod": 2, "+": 1, "-": 1, "or": 1, "xor": 1, "and": 1}


@dataclass
class Text:
    """A line without its comments and spaces, in small letters, and how far it is read. ``parameter`` gives the value that a
    number's parameter has before this line."""

    text: str
    line: int
    parameter: Callable[[int], float]
    at: int = 0
    has_signed_value: bool = False  # a sign before a parameter, an expression or a function

    def peek(self) -> str:
        return self.text[self.at] if self.at < len(self.text) else ""

    def take(self, sign: str) -> None:
        """Go past what must stand here."""
        if not self.text.startswith(sign, self.at):
            raise Refused("program-expected", line=self.line, sign=sign, near=self.near())
        self.at += len(sign)

    def near(self) -> str:
        """What stands around here, for a person to find it."""
        return self.text[max(self.at - 10, 0) : self.at + 10].upper()


def real_value(text: Text, depth: int = 0) -> float:
    """The value that begins here. Refused: what is none, and what has none (1/0)."""
    if depth > MOST_NESTED:
        raise Refused("program-nested", line=text.line, most=MOST_NESTED)
    number = _NUMBER.match(text.text, text.at)
    if number:
        text.at = number.end()
        return _sound(float(number[0]), text)
    sign = text.peek()
    if sign == "[":
        return _expression(text, depth + 1)
    if sign == "#":
        text.at += 1
        if text.peek() == "<":
            raise LeftOut("named-parameter")
        return text.parameter(parameter_number(real_value(text, depth + 1), text))
    if sign in ("+", "-") and text.text[text.at + 1 : text.at + 2] not in ("", "+", "-"):
        text.at += 1
        text.has_signed_value = True
        value = real_value(text, depth + 1)
        return -value if sign == "-" else value
    return _function(text, depth)


def parameter_number(value: float, text: Text) -> int:
    """Of which parameter a value is the number."""
    near = round(value)
    if abs(value - near) > NEAR_WHOLE or not 1 <= near <= HIGHEST_PARAMETER:
        raise Refused("program-parameter", line=text.line, most=HIGHEST_PARAMETER)
    return near


def _expression(text: Text, depth: int) -> float:
    text.take("[")
    values, waiting = [real_value(text, depth)], [""]
    while text.peek() != "]":
        operation = _OPERATION.match(text.text, text.at)
        if not operation:
            raise Refused("program-bracket", line=text.line, near=text.near())
        if operation[0] not in _RANKS:
            raise LeftOut("operation-unknown", name=operation[0].upper())
        text.at = operation.end()
        while waiting[-1] and _RANKS[waiting[-1]] >= _RANKS[operation[0]]:
            _work_off(values, waiting, text)
        waiting.append(operation[0])
        values.append(real_value(text, depth))
    text.at += 1
    while waiting[-1]:
        _work_off(values, waiting, text)
    return values[0]


def _work_off(values: list[float], waiting: list[str], text: Text) -> None:
    right, left = values.pop(), values.pop()
    values.append(_worked(waiting.pop(), left, right, text))


def _worked(operation: str, left: float, right: float, text: Text) -> float:
    try:
        match operation:
            case "**":
                found = math.pow(left, right)
            case "*":
                found = left * right
            case "/":
                found = left / right
            case "mod":
                found = math.fmod(left, right)
                found += abs(right) if found < 0 else 0
            case "+":
                found = left + right
            case "-":
                found = left - right
            case "or":
                found = float(bool(left) or bool(right))
            case "and":
                found = float(bool(left) and bool(right))
            case _:
                found = float(bool(left) != bool(right))
    except (ArithmeticError, ValueError):
        raise Refused("program-arithmetic", line=text.line) from None
    return _sound(found, text)


def _sound(value: float, text: Text) -> float:
    if not math.isfinite(value):
        raise Refused("program-arithmetic", line=text.line)
    return value


_FUNCTIONS: dict[str, Callable[[float], float]] = {
    "abs": abs,
    "acos": lambda value: math.degrees(math.acos(value)),
    "asin": lambda value: math.degrees(math.asin(value)),
    "cos": lambda value: math.cos(math.radians(value)),
    "exp": math.exp,
    "fix": math.floor,
    "fup": math.ceil,
    "ln": math.log,
    "round": lambda value: math.trunc(value + math.copysign(0.5, value)),
    "sin": lambda value: math.sin(math.radians(value)),
    "sqrt": math.sqrt,
    "tan": lambda value: math.tan(math.radians(value)),
}


def _function(text: Text, depth: int) -> float:
    name = _NAME.match(text.text, text.at)
    if not name or not text.text.startswith("[", name.end()):
        raise Refused("program-number", line=text.line, near=text.near())
    if name[0] != "atan" and name[0] not in _FUNCTIONS:
        raise LeftOut("operation-unknown", name=name[0].upper())
    text.at = name.end()
    value = _expression(text, depth + 1)
    try:
        if name[0] == "atan":
            text.take("/")
            return math.degrees(math.atan2(value, _expression(text, depth + 1)))
        return _sound(float(_FUNCTIONS[name[0]](value)), text)
    except (ArithmeticError, ValueError):
        raise Refused("program-arithmetic", line=text.line) from None
