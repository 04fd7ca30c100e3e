"""The dispatch rule's functions, written down in the compiler's language (LLVM IR).

They are whole numbers, rows and loops and nothing else, so this is the whole translation: numbers are 64 bits, conditions
one bit, a row the address of 32-bit numbers that no other row overlaps. Anything that is not foreseen here is refused, so
a function that a person can read is the only source. Arithmetic is the same as Python's as long as it fits.
"""

import ast
import inspect
from collections.abc import Callable, Iterable, Sequence
from types import FunctionType
from typing import Any

from llvmlite import ir

from runboard.plan.schedule.kernel.row import Row

NUMBER, CONDITION, STORED = ir.IntType(64), ir.IntType(1), ir.IntType(32)
_TYPES: dict[Any, ir.Type] = {
    Row: STORED.as_pointer(),
    int: NUMBER,
    bool: CONDITION,
    tuple[int, int]: ir.LiteralStructType([NUMBER] * 2),
    tuple[int, int, int]: ir.LiteralStructType([NUMBER] * 3),
    None: ir.VoidType(),
}
_SIGNS = {ast.Lt: "<", ast.LtE: "<=", ast.Gt: ">", ast.GtE: ">=", ast.Eq: "==", ast.NotEq: "!="}


class NotForeseen(Exception):
    """The source has something that is not translated."""

    def __init__(self, node: ast.AST) -> None:
        super().__init__(ast.unparse(node))


def translated(functions: Sequence[FunctionType], entry: str) -> str:
    """The functions as one module, of which only ``entry`` is seen from outside. Raises ``NotForeseen``."""
    module = ir.Module("dispatch rule")
    made = {function.__name__: _declared(module, function, entry) for function in functions}
    for function in functions:
        _Function(made[function.__name__], function, made).write()
    return str(module)


def _declared(module: ir.Module, function: FunctionType, entry: str) -> ir.Function:
    hints = dict(function.__annotations__)
    answers = _TYPES[hints.pop("return")]
    made = ir.Function(module, ir.FunctionType(answers, [_TYPES[hint] for hint in hints.values()]), function.__name__)
    made.linkage = "" if function.__name__ == entry else "internal"
    for argument, (name, hint) in zip(made.args, hints.items(), strict=True):
        argument.name = name
        if hint is Row:
            argument.add_attribute("noalias")
    return made


class _Function:
    """One function being written: its variables lie on the stack, from where the compiler takes them into registers."""

    def __init__(self, made: ir.Function, source: FunctionType, others: dict[str, ir.Function]) -> None:
        self.made, self.others, self.known = made, others, source.__globals__
        self.tree = ast.parse(inspect.getsource(source))
        self.head = ir.IRBuilder(made.append_basic_block("head"))
        self.builder = ir.IRBuilder(made.append_basic_block("body"))
        self.names: dict[str, Any] = {}
        self.loops: list[tuple[ir.Block, ir.Block]] = []

    def write(self) -> None:
        start = self.builder.block
        for argument in self.made.args:
            if isinstance(argument.type, ir.IntType):
                self._put(argument.name, argument)
            else:
                self.names[argument.name] = argument
        for function in self.tree.body:
            if isinstance(function, ast.FunctionDef):
                self._all(function.body)
        if not self.builder.block.is_terminated:
            self.builder.ret_void()
        self.head.branch(start)

    # what is done

    def _all(self, statements: Iterable[ast.stmt]) -> None:
        for one in statements:
            if self.builder.block.is_terminated:
                return
            self._do(one)

    def _do(self, one: ast.stmt) -> None:
        match one:
            case ast.Assign(targets=[target], value=value):
                self._assign(target, value)
            case ast.AugAssign(target=target, op=op, value=value):
                place, by = self._place(target), self._value(value)
                self._store(place, self._sum(one, op, self._load(place), by))
            case ast.If():
                self._if(one)
            case ast.While(orelse=[]):
                self._loop(lambda: self._value(one.test), one.body, lambda: None)
            case ast.For(orelse=[]):
                self._for(one)
            case ast.Return(value=None):
                self.builder.ret_void()
            case ast.Return(value=ast.Tuple(elts=parts)):
                whole = ir.Constant(self.made.function_type.return_type, None)
                for at, part in enumerate(parts):
                    whole = self.builder.insert_value(whole, self._value(part), at)
                self.builder.ret(whole)
            case ast.Return(value=value):
                self.builder.ret(self._value(value))
            case ast.Continue():
                self.builder.branch(self.loops[-1][0])
            case ast.Break():
                self.builder.branch(self.loops[-1][1])
            case ast.Expr(value=ast.Call() as call):
                self._value(call)
            case ast.Pass() | ast.Expr(value=ast.Constant()):
                pass
            case _:
                raise NotForeseen(one)

    def _assign(self, target: ast.expr, value: ast.expr) -> None:
        match target, value:
            case ast.Tuple(elts=targets), ast.Tuple(elts=parts):
                values = [self._value(part) for part in parts]
            case ast.Tuple(elts=targets), _:
                whole = self._value(value)
                values = [self.builder.extract_value(whole, at) for at in range(len(targets))]
            case _:
                targets, values = [target], [self._value(value)]
        for one, found in zip(targets, values, strict=True):
            if isinstance(one, ast.Name):
                self._put(one.id, found)
            else:
                self._store(self._place(one), found)

    def _if(self, one: ast.If) -> None:
        then, other, after = (self.made.append_basic_block(name) for name in ("then", "else", "after"))
        self.builder.cbranch(self._value(one.test), then, other)
        goes_on = False
        for block, statements in ((then, one.body), (other, one.orelse)):
            self.builder.position_at_end(block)
            self._all(statements)
            goes_on = goes_on or not self.builder.block.is_terminated
            self._go_on(after)
        self.builder.position_at_end(after)
        if not goes_on:
            self.builder.unreachable()

    def _for(self, one: ast.For) -> None:
        match one:
            case ast.For(target=ast.Name(id=name), iter=ast.Call(func=ast.Name(id="range"), args=bounds, keywords=[])):
                numbers = [self._value(bound) for bound in bounds]
            case _:
                raise NotForeseen(one)
        first, last = numbers if len(numbers) == 2 else (NUMBER(0), numbers[0])
        count = self.head.alloca(NUMBER)
        self.builder.store(first, count)

        def goes_on() -> Any:
            at = self.builder.load(count)
            self._put(name, at)
            return self.builder.icmp_signed("<", at, last)

        self._loop(goes_on, one.body, lambda: self._step(count))

    def _step(self, count: Any) -> None:
        self.builder.store(self.builder.add(self.builder.load(count), NUMBER(1)), count)

    def _loop(self, goes_on: Callable[[], Any], body: list[ast.stmt], step: Callable[[], None]) -> None:
        test, inside, onward, after = (self.made.append_basic_block(name) for name in ("test", "in", "next", "out"))
        self.builder.branch(test)
        self.builder.position_at_end(test)
        self.builder.cbranch(goes_on(), inside, after)
        self.builder.position_at_end(inside)
        self.loops.append((onward, after))
        self._all(body)
        self.loops.pop()
        self._go_on(onward)
        self.builder.position_at_end(onward)
        step()
        self.builder.branch(test)
        self.builder.position_at_end(after)

    def _go_on(self, block: ir.Block) -> None:
        if not self.builder.block.is_terminated:
            self.builder.branch(block)

    # places

    def _put(self, name: str, value: Any) -> None:
        if name not in self.names:
            self.names[name] = self.head.alloca(value.type, name=name)
        self.builder.store(value, self.names[name])

    def _place(self, one: ast.expr) -> Any:
        match one:
            case ast.Name(id=name):
                return self.names[name]
            case ast.Subscript(value=ast.Name(id=name), slice=at):
                return self.builder.gep(self.names[name], [self._value(at)])
        raise NotForeseen(one)

    def _store(self, place: Any, value: Any) -> None:
        if place.type.pointee == STORED:
            value = self.builder.trunc(value, STORED)
        self.builder.store(value, place)

    def _load(self, place: Any) -> Any:
        value = self.builder.load(place)
        return self.builder.sext(value, NUMBER) if value.type == STORED else value

    # values

    def _value(self, one: ast.expr | None) -> Any:
        match one:
            case ast.Constant(value=bool() as value):
                return CONDITION(int(value))
            case ast.Constant(value=int() as value):
                return NUMBER(value)
            case ast.Name(id=name) if name in self.names:
                row = self.names[name]
                return row if row in self.made.args else self._load(row)
            case ast.Name(id=name) if isinstance(self.known.get(name), int):
                return NUMBER(self.known[name])
            case ast.Subscript():
                return self._load(self._place(one))
            case ast.BinOp(left=left, op=op, right=right):
                return self._sum(one, op, self._value(left), self._value(right))
            case ast.UnaryOp(op=ast.USub(), operand=operand):
                return self.builder.neg(self._value(operand))
            case ast.UnaryOp(op=ast.Not(), operand=operand):
                return self.builder.not_(self._value(operand))
            case ast.Compare():
                return self._compared(one)
            case ast.BoolOp(op=op, values=[first, *rest]):
                return self._any_or_all(isinstance(op, ast.Or), first, rest)
            case ast.IfExp(test=test, body=body, orelse=other):
                return self._either(self._value(test), lambda: self._value(body), lambda: self._value(other))
            case ast.Call(func=ast.Name(id=name), args=[one_, other], keywords=[]) if name in ("min", "max"):
                first, second = self._value(one_), self._value(other)
                takes = self.builder.icmp_signed("<" if name == "min" else ">", second, first)
                return self.builder.select(takes, second, first)
            case ast.Call(func=ast.Name(id=name), args=given, keywords=[]) if name in self.others:
                return self.builder.call(self.others[name], [self._value(each) for each in given])
        raise NotForeseen(one or self.tree)

    def _sum(self, one: ast.AST, op: ast.operator, left: Any, right: Any) -> Any:
        match op:
            case ast.Add():
                return self.builder.add(left, right)
            case ast.Sub():
                return self.builder.sub(left, right)
            case ast.Mult():
                return self.builder.mul(left, right)
            case ast.FloorDiv() if isinstance(right, ir.Constant) and right.constant > 0:
                rest = self.builder.srem(left, right)
                below = self.builder.icmp_signed("<", rest, NUMBER(0))
                return self.builder.sub(self.builder.sdiv(left, right), self.builder.zext(below, NUMBER))
        raise NotForeseen(one)

    def _compared(self, one: ast.Compare) -> Any:
        values = [self._value(each) for each in (one.left, *one.comparators)]
        found = None
        for at, op in enumerate(one.ops):
            holds = self.builder.icmp_signed(_SIGNS[type(op)], values[at], values[at + 1])
            found = holds if found is None else self.builder.and_(found, holds)
        return found

    def _any_or_all(self, is_any: bool, first: ast.expr, rest: list[ast.expr]) -> Any:
        found = self._value(first)
        if not rest:
            return found
        settled, open_ = (lambda: CONDITION(int(is_any))), (lambda: self._any_or_all(is_any, rest[0], rest[1:]))
        return self._either(found, *((settled, open_) if is_any else (open_, settled)))

    def _either(self, test: Any, then: Callable[[], Any], other: Callable[[], Any]) -> Any:
        """One of two values; the other is not looked at, since its place may not be there."""
        blocks = [self.made.append_basic_block(name) for name in ("yes", "no", "either")]
        self.builder.cbranch(test, *blocks[:2])
        found = []
        for block, value in zip(blocks, (then, other), strict=False):
            self.builder.position_at_end(block)
            found.append((value(), self.builder.block))
            self.builder.branch(blocks[2])
        self.builder.position_at_end(blocks[2])
        joined = self.builder.phi(found[0][0].type)
        for value_, from_ in found:
            joined.add_incoming(value_, from_)
        return joined
