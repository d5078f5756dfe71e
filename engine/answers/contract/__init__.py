"""What each door answers, as types, a file for each: the page's own types are made from these.

Every quantity has `value` in its `unit` (lengths in mm), `text` in the knitter's units and `other`
in the other ones. A name that is not here is not in the answer, and one that is here is, but for
those marked as not required. (No file here postpones its annotations: only so can a type be asked
what it does not require.)
"""

from engine.answers.contract.chart import Chart
from engine.answers.contract.foot import FootAlone
from engine.answers.contract.instructions import Adopted, InstructionSet
from engine.answers.contract.kept import Again, KnittedRecord, OfKnitter, Opened, Page, Used
from engine.answers.contract.knit import Knit
from engine.answers.contract.paper import Card, Code, OffSheet, Tag
from engine.answers.contract.pencil import Pencil
from engine.answers.contract.plan import Plan
from engine.answers.contract.request import FieldList, Readings
from engine.answers.contract.shelf import Shelf

# By the name that a call has in `do`.
DOORS: dict[str, type] = {
    "plan": Plan,
    "page": Page,
    "pencil": Pencil,
    "knit": Knit,
    "again": Again,
    "used": Used,
    "card": Card,
    "tag": Tag,
    "off_sheet": OffSheet,
    "code": Code,
    "foot": FootAlone,
    "chart": Chart,
    "set": InstructionSet,
    "adopt": Adopted,
    "shelf": Shelf,
    "record": KnittedRecord,
    "knitter": OfKnitter,
    "open": Opened,
    "read": Readings,
    "fields": FieldList,
}
