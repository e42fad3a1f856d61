"""Dates so many days after others, from Python's own calendar.

Run: python calendar_days.py > calendar_days.json
"""

import json
import random
from datetime import date, timedelta

random.seed(1)
cases = []
for _ in range(200):
    start = date(1900, 1, 1) + timedelta(days=random.randrange(400_000))
    days = random.randrange(2_000)
    if (start + timedelta(days=days)).year <= 2999:
        cases.append({"start": start.isoformat(), "days": days, "end": (start + timedelta(days=days)).isoformat()})
print(json.dumps(cases))
