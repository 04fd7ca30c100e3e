"""Questions about boards, as kinds."""

from runboard.plan.before.kind import Kind
from runboard.plan.stock.answer import answer
from runboard.plan.stock.keeps import keeps
from runboard.plan.stock.question import StockQuestion, begin

# In a child: where a gap to the bound stays, a solver is loaded and searches.
STOCK = Kind("stock", StockQuestion, answer, begin, keeps, endings=(".dxf", ".svg"), is_long=True)
