"""Plans, cues and reports: what the notes on these people mean for the rallies to come.

Doors: `report.advise`, `plan.advise`, `cue.advise`.
"""
