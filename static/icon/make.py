"""Draws the icon that a browser shows in its list of tabs: a star over a pier on its block, from nothing but rectangles.

    python3 static/icon/make.py

writes icon.svg and favicon.ico (16 and 32 dots, each a PNG) beside this file, the same bytes each time.
"""

import struct
import zlib
from pathlib import Path

HERE = Path(__file__).parent
# x, y, width, height on a field of 16 by 16, and colour.
GROUND = "#6b6257"
STEEL = "#2f4858"
STAR = "#c98a1b"
PARTS = [
    (1, 9, 14, 1, GROUND),
    (4, 10, 8, 5, "#9a9a94"),
    (7, 4, 2, 6, STEEL),
    (5, 3, 6, 1, STEEL),
    (5, 9, 6, 1, STEEL),
    (12, 1, 1, 3, STAR),
    (11, 2, 3, 1, STAR),
]


def svg():
    parts = "".join(
        f'<rect x="{x}" y="{y}" width="{w}" height="{h}" fill="{c}"/>' for x, y, w, h, c in PARTS
    )
    return f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 16 16">{parts}</svg>\n'


def png(scale):
    size = 16 * scale
    dots = [bytearray(size * 4) for _ in range(size)]
    for x, y, w, h, colour in PARTS:
        rgba = bytes.fromhex(colour[1:]) + b"\xff"
        for row in range(y * scale, (y + h) * scale):
            for column in range(x * scale, (x + w) * scale):
                dots[row][column * 4 : column * 4 + 4] = rgba

    def chunk(kind, data):
        check = zlib.crc32(kind + data)
        return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", check)

    head = struct.pack(">IIBBBBB", size, size, 8, 6, 0, 0, 0)
    rows = zlib.compress(b"".join(b"\0" + bytes(row) for row in dots), 9)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", rows) + chunk(b"IEND", b"")


def ico():
    pictures = [(16, png(1)), (32, png(2))]
    head = struct.pack("<HHH", 0, 1, len(pictures))
    at = len(head) + 16 * len(pictures)
    for size, data in pictures:
        head += struct.pack("<BBBBHHII", size, size, 0, 0, 1, 32, len(data), at)
        at += len(data)
    return head + b"".join(data for _, data in pictures)


(HERE / "icon.svg").write_text(svg(), encoding="utf-8")
(HERE / "favicon.ico").write_bytes(ico())
