"""The edges where messages come and go. Each channel turns its own protocol into the few words of `base`."""
