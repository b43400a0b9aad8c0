"""The store: what is kept, on SQLite or PostgreSQL. It knows the core, never the web."""

from .database import Store as Store
from .explain import explain as explain
from .migrate import at_head as at_head
from .migrate import upgrade as upgrade
from .models import Build as Build
from .models import Chain as Chain
from .models import Device as Device
from .models import Drive as Drive
from .models import DynoRun as DynoRun
from .models import DynoSession as DynoSession
from .models import Engine as Engine
from .models import Entry as Entry
from .models import GearSet as GearSet
from .models import Plan as Plan
from .models import Reading as Reading
from .records import ReadingExists as ReadingExists
