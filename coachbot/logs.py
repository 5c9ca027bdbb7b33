"""Logs: one line per unit of work, with one stable action word; never a person's words, address, name or secret."""

import logging
import sys

import structlog


def configure(style: str, least: int = logging.INFO) -> None:
    """Log to standard error, as JSON lines or, with `style` ``console``, for people; nothing under level `least`."""
    renderer: structlog.typing.Processor = (
        structlog.dev.ConsoleRenderer() if style == "console" else structlog.processors.JSONRenderer()
    )
    structlog.configure(
        processors=[
            structlog.contextvars.merge_contextvars,
            structlog.processors.add_log_level,
            structlog.processors.TimeStamper(fmt="iso", utc=True),
            structlog.processors.EventRenamer("action"),
            _without_values,
            renderer,
        ],
        wrapper_class=structlog.make_filtering_bound_logger(least),
        logger_factory=structlog.PrintLoggerFactory(sys.stderr),
    )
    logging.basicConfig(level=logging.WARNING, handlers=[_Libraries()], force=True)


class _Libraries(logging.Handler):
    """What a library logs, by its name and kind only: its words may quote a statement, an address or a token."""

    def emit(self, record: logging.LogRecord) -> None:
        """Log that something was logged."""
        kind = record.exc_info[0].__name__ if record.exc_info and record.exc_info[0] else ""
        structlog.get_logger().warning("library", library=record.name, error=kind)


def _without_values(_: object, __: str, event: structlog.typing.EventDict) -> structlog.typing.EventDict:
    """An exception's message may hold a family's words: keep its kind and where it came from, not what it says."""
    error = event.pop("exc_info", None)
    if error:
        kind, value, trace = sys.exc_info() if error is True else (type(error), error, error.__traceback__)
        event["error"] = kind.__name__ if kind else "unknown"
        if word := getattr(value, "word", ""):  # the store's: which trouble of the database it is
            event["reason"] = word
        while trace and trace.tb_next:
            trace = trace.tb_next
        if trace:
            event["at"] = f"{trace.tb_frame.f_code.co_filename.rpartition('coachbot')[2]}:{trace.tb_lineno}"
        del value
    return event


def silence() -> None:
    """Log nothing: the terminal belongs to the command's own words."""
    structlog.configure(wrapper_class=structlog.make_filtering_bound_logger(logging.CRITICAL))
