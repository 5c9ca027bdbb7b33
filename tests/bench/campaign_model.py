"""The state machine of outbox and alerts (`tests/service/test_model.py`), for longer than a test run can.

Run: ``python tests/bench/campaign_model.py [examples] [steps]``. Prints one JSON line; a broken law ends it,
and the way to it is told.
"""

import json
import sys
from pathlib import Path
from time import monotonic

from hypothesis import HealthCheck, Phase, settings
from hypothesis.stateful import run_state_machine_as_test

sys.path.insert(0, str(Path(__file__).parents[1]))

from service.test_model import Clinic

if __name__ == "__main__":
    examples, steps = [int(word) for word in sys.argv[1:]] or (200, 60)
    began = monotonic()
    run_state_machine_as_test(
        Clinic,
        settings=settings(
            max_examples=examples,
            stateful_step_count=steps,
            deadline=None,
            phases=[Phase.explicit, Phase.generate],  # the shortest way takes longer to find than to read the longest
            suppress_health_check=list(HealthCheck),
        ),
    )
    print(json.dumps({"examples": examples, "steps": steps, "broken": 0, "seconds": round(monotonic() - began)}))
