"""The papers that people hold in their hands: the follow-up report, rating sheets, the invitation card."""
