"""Turns what the coach wants said into words and pictures. All the words live in `prompts/`."""
