"""A practice coach, by chat and text message, for families whose child is learning to swallow pills."""
