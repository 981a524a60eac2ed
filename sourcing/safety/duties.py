"""The table of guarded duties: the words that tell each, what could happen to whom, and who should do the work.

The list is the project's own judgement of what can hurt someone (common practice, no source). Phrases are looked up
whole and longest first; how the words round a phrase change what it means is the business of `judgement`. Things
that take the danger out of every duty's words are in `harmless`. The order of the table decides nothing.
"""

from __future__ import annotations

from sourcing.safety.body_duties import BODY_DUTIES
from sourcing.safety.building_duties import BUILDING_DUTIES
from sourcing.safety.machine_duties import MACHINE_DUTIES
from sourcing.safety.model import Duty
from sourcing.safety.vehicle_duties import VEHICLE_DUTIES

DUTIES: tuple[Duty, ...] = (*BUILDING_DUTIES, *VEHICLE_DUTIES, *MACHINE_DUTIES, *BODY_DUTIES)
