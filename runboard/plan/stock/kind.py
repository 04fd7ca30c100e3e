"""Questions about boards, as kinds."""

from runboard.plan.before.kind import Kind
from runboard.plan.stock.answer import answer, is_quick
from runboard.plan.stock.keeps import keeps
from runboard.plan.stock.question import StockQuestion, begin

# In a child where pieces may lie either way: a gap to the bound may stay, and then a solver is loaded and searches.
STOCK = Kind("stock", StockQuestion, answer, begin, keeps, endings=(".dxf", ".svg"), is_long=True, is_quick=is_quick)
