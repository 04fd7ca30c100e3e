"""Answers gzipped: what is the same is gzipped once, also behind a few bytes that are not."""

import gzip
import struct
import zlib
from functools import lru_cache

LEAST = 1024  # bytes, from which it is worth it
_LEVEL = 5
_HEADER = b"\x1f\x8b\x08\0\0\0\0\0\0\xff"  # RFC 1952, 2.3: deflate, no flags, no time, any system


@lru_cache(maxsize=128)  # scripts and styles are asked for again and again
def packed(body: bytes) -> bytes:
    """The same, gzipped."""
    return gzip.compress(body, compresslevel=_LEVEL, mtime=0)


def packed_behind(head: str, text: str, skip: int = 0) -> bytes:
    """Both gzipped as one: ``head``, at most 65,535 bytes, as it is (RFC 1951, 3.2.4: a block that is stored), ``text`` but for the
    first ``skip`` letters as it was gzipped before."""
    first = head.encode()
    rest, deflated = _deflated(text, skip)
    stored = b"\0" + struct.pack("<HH", len(first), len(first) ^ 0xFFFF) + first
    check = zlib.crc32(rest, zlib.crc32(first))
    return _HEADER + stored + deflated + struct.pack("<II", check, (len(first) + len(rest)) & 0xFFFFFFFF)


@lru_cache(maxsize=64)  # a state for each person, and a little
def _deflated(text: str, skip: int) -> tuple[bytes, bytes]:
    rest = text[skip:].encode()
    made = zlib.compressobj(_LEVEL, zlib.DEFLATED, -zlib.MAX_WBITS)
    return rest, made.compress(rest) + made.flush()
