"""The clinician's desk: web pages over the store. Every button that changes a case is an event given to the coach."""
