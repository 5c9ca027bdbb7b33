"""Reading arrays out of an NPZ file with the standard library, so that triage needs no numerical package."""

import struct
from array import array
from ast import literal_eval
from collections.abc import Sequence
from typing import IO, Any
from zipfile import ZipFile

_MAGIC = b"\x93NUMPY\x01\x00"
_CODES = {"|u1": "B", "|i1": "b", "<u2": "H", "<f4": "f"}


def read(file: IO[bytes]) -> dict[str, Sequence[Any]]:
    """Every array of the file by name, flat.

    Raises:
        ValueError: an array is of a format (NPY 1.0, little-endian) or type that is not expected here.
    """
    with ZipFile(file) as archive:
        return {name.removesuffix(".npy"): _array(archive.read(name)) for name in archive.namelist()}


def _array(data: bytes) -> Any:
    if not data.startswith(_MAGIC):
        raise ValueError("not an array in NPY format 1.0")
    (length,) = struct.unpack_from("<H", data, len(_MAGIC))
    start = len(_MAGIC) + 2
    header = literal_eval(data[start : start + length].decode("latin-1"))
    if header["descr"] not in _CODES or header["fortran_order"]:
        raise ValueError(f"an array of type {header['descr']} is not expected")
    values: Any = array(_CODES[header["descr"]])
    values.frombytes(data[start + length :])
    return values
