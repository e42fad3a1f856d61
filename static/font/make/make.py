"""Makes the font files in the folder above from the two upstream typefaces.

Not part of any build: run by hand when a character is missing or a typeface is replaced, and commit what it writes.

    python3 -m venv venv && venv/bin/pip install fonttools brotli
    apt-get install fonts-sil-gentiumplus
    npm pack @ibm/plex-sans && tar xzf *plex-sans-*.tgz
    venv/bin/python make.py /usr/share/fonts/truetype/gentiumplus package/fonts/complete/woff2

Both typefaces come under the SIL Open Font License 1.1, whose texts stand beside the fonts. The licence reserves the
upstream names, so the cut-down fonts carry names of their own; copyright and licence entries inside them stay.

`text` is a book face with Greek, `figures` a plain sans with figures of equal width for tables and drawings. Each is cut
down to Latin, Latin Extended, Greek, Cyrillic and the symbols of formulas, and written twice: .woff2 for pages, .ttf for the PDF.
"""

import pathlib
import sys

from fontTools import subset
from fontTools.ttLib import TTFont

RANGES = [
    (0x20, 0x7E),      # basic Latin
    (0xA0, 0x17F),     # Latin-1 and Extended-A
    (0x180, 0x24F),    # Latin Extended-B
    (0x2B0, 0x2DD),    # modifier letters
    (0x300, 0x333),    # combining marks
    (0x370, 0x3FF),    # Greek
    (0x400, 0x45F),    # Cyrillic: Russian, Ukrainian, Bulgarian, Serbian and their neighbours
    (0x490, 0x493),    # Cyrillic: letters with strokes that those have beyond it
    (0x1E00, 0x1EFF),  # Latin Extended Additional
    (0x2000, 0x206F),  # spaces, dashes, quotation marks, primes
    (0x2070, 0x209F),  # superscripts and subscripts
    (0x20A0, 0x20BF),  # currency
    (0x2100, 0x218F),  # letterlike, number forms
    (0x2190, 0x21FF),  # arrows
    (0x2200, 0x22FF),  # mathematical operators
    (0x25A0, 0x25FF),  # geometric shapes
    (0x2713, 0x2713),  # check mark
]

FILES = [
    ("text-regular", "Stillground Text", "Regular", 0, "GentiumBookPlus-Regular.ttf"),
    ("text-italic", "Stillground Text", "Italic", 0, "GentiumBookPlus-Italic.ttf"),
    ("text-bold", "Stillground Text", "Bold", 0, "GentiumBookPlus-Bold.ttf"),
    ("figures-regular", "Stillground Figures", "Regular", 1, "IBMPlexSans-Regular.woff2"),
    ("figures-bold", "Stillground Figures", "Bold", 1, "IBMPlexSans-SemiBold.woff2"),
]

FEATURES = ["kern", "mark", "mkmk", "ccmp", "locl"]


def options():
    chosen = subset.Options()
    chosen.layout_features = FEATURES
    chosen.hinting = False
    chosen.name_IDs = [0, 1, 2, 3, 4, 5, 6, 13, 14]
    chosen.name_languages = [0x409]
    chosen.notdef_outline = True
    chosen.drop_tables += ["Silf", "Silt", "Glat", "Gloc", "Feat", "Sill", "DSIG", "meta"]
    chosen.recalc_timestamp = False
    return chosen


def rename(font, family, style):
    postscript = f"{family}-{style}".replace(" ", "")
    for record in font["name"].names:
        texts = {1: family, 2: style, 3: postscript, 4: f"{family} {style}", 6: postscript}
        if record.nameID in texts:
            record.string = texts[record.nameID]


def make(name, family, style, source):
    font = TTFont(source, recalcTimestamp=False)
    cutter = subset.Subsetter(options())
    cutter.populate(unicodes=[code for first, last in RANGES for code in range(first, last + 1)])
    cutter.subset(font)
    rename(font, family, style)
    font["head"].modified = font["head"].created
    folder = pathlib.Path(__file__).resolve().parent.parent
    font.flavor = None
    font.save(folder / f"{name}.ttf", reorderTables=True)
    font.flavor = "woff2"
    font.save(folder / f"{name}.woff2")


for name, family, style, folder, file in FILES:
    make(name, family, style, pathlib.Path(sys.argv[1 + folder]) / file)
