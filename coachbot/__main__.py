"""Lets ``python -m coachbot`` stand for the `coachbot` command."""

import sys

from coachbot.cli import main

sys.exit(main())
