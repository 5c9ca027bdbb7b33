"""The whole thing on one machine: phones in memory, a clock that is moved by hand, no account and no network."""
