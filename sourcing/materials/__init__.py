"""Spring wire: what each material is, how strong it is at a diameter, what it stands. Tables in sourcing/tables/."""

from sourcing.materials.facts import Fact as Fact
from sourcing.materials.facts import disagreements as disagreements
from sourcing.materials.facts import facts as facts
from sourcing.materials.facts import stress_facts as stress_facts
from sourcing.materials.names import find as find
from sourcing.materials.names import folded as folded
from sourcing.materials.names import names as names
from sourcing.materials.names import words as words
