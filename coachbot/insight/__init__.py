"""What the swallows say: the favourite position, adherence, a cohort. Pure: no I/O, no clock, no text for people."""
