"""Print the N-th `sh` block of README.md: `python3 .ci/readme_command.py 1`."""

import re
import sys
from pathlib import Path

blocks = re.findall(r"^```sh\n(.*?)^```", Path("README.md").read_text("utf-8"), re.M | re.S)
print(blocks[int(sys.argv[1]) - 1].strip())
