#!/usr/bin/env python3
"""Makes the woff2 files of this folder from IBM Plex Sans and IBM Plex Sans Condensed.

    npm pack @ibm/plex-sans@1.1.0 @ibm/plex-sans-condensed@2.0.0   (unpack both)
    pip install fonttools==4.66.1 brotli==1.2.0
    python3 make_fonts.py PLEX_SANS_FOLDER PLEX_SANS_CONDENSED_FOLDER OUT

What it changes, and why:
  - only the letters that a sheet is likely to need are kept (see WANTED);
  - the slashed zero, which tells a part number's 0 from its O, is a font of its own: as a variant
    of the typeface a reader of the PDF would find a nameless sign in place of a zero;
  - figures of fractions are fonts of their own (numerators, denominators), larger and heavier
    than the typeface's own small figures: they are read at arm's length, and each is still an
    ordinary digit in the PDF's text;
  - tick boxes, the safety alert triangle and a few marks are drawn here: the typeface lacks them;
  - the files bear another name, as the license asks of changed versions (OFL 1.1, condition 3).
"""
import sys
from fontTools import subset
from fontTools.pens.boundsPen import BoundsPen
from fontTools.pens.transformPen import TransformPen
from fontTools.pens.ttGlyphPen import TTGlyphPen
from fontTools.ttLib import TTFont

WANTED = (
    list(range(0x20, 0x7F)) + list(range(0xA0, 0x180)) + [0x192, 0x218, 0x219, 0x21A, 0x21B]
    + [0x2C6, 0x2DA, 0x2DC, 0x394, 0x3A9, 0x3B1, 0x3B2, 0x3B8, 0x3BB, 0x3BC, 0x3C0, 0x3C1, 0x3C8]
    + list(range(0x2007, 0x200B)) + list(range(0x2010, 0x2016)) + list(range(0x2018, 0x201F))
    + [0x2020, 0x2021, 0x2022, 0x2026, 0x202F, 0x2030, 0x2032, 0x2033, 0x2039, 0x203A, 0x2044]
    + [0x2060, 0x2070, 0x20AC, 0x2116, 0x2122, 0x2126, 0x212B]
    + list(range(0x2074, 0x207A)) + list(range(0x2080, 0x208A)) + list(range(0x2150, 0x215F))
    + [0x2190, 0x2191, 0x2192, 0x2193, 0x2194, 0x21D2, 0x2206, 0x2212, 0x2215, 0x221A, 0x221E]
    + [0x2248, 0x2260, 0x2264, 0x2265, 0x2713, 0x2717]
)
FIGURES = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine']
SLASHED = 'zero.alt02'


def polygon(pen, points):
    pen.moveTo(points[0])
    for point in points[1:]:
        pen.lineTo(point)
    pen.closePath()


def box(pen, left, bottom, right, top, inward=False):
    points = [(left, bottom), (left, top), (right, top), (right, bottom)]
    polygon(pen, points[::-1] if inward else points)


def disc(pen, x, y, r, inward=False):
    # Four quadratic arcs a quadrant would be finer; eight in all are round enough in print.
    k = r * 0.4142
    c = r * 0.7071
    steps = [((k, r), (c, c)), ((r, k), (r, 0)), ((r, -k), (c, -c)), ((k, -r), (0, -r)),
             ((-k, -r), (-c, -c)), ((-r, -k), (-r, 0)), ((-r, k), (-c, c)), ((-k, r), (0, r))]
    if inward:
        steps = [((-a, b), (-p, q)) for (a, b), (p, q) in steps]
    pen.moveTo((x, y + r))
    for (a, b), (p, q) in steps:
        pen.qCurveTo((x + a, y + b), (x + p, y + q))
    pen.closePath()


def marks():
    """name, code point, advance, drawing"""
    def ballot(pen):
        box(pen, 80, -20, 800, 700)
        box(pen, 130, 30, 750, 650, True)

    def ballot_checked(pen):
        ballot(pen)
        polygon(pen, [(230, 330), (290, 390), (390, 270), (600, 560), (670, 510), (400, 140)])

    def alert(pen):
        polygon(pen, [(30, -20), (470, 760), (910, -20)])
        polygon(pen, [(150, 48), (790, 48), (470, 620)])
        polygon(pen, [(415, 470), (525, 470), (500, 235), (440, 235)])
        disc(pen, 470, 150, 52)

    def square(pen):
        box(pen, 80, -20, 800, 700)

    def small_square(pen):
        box(pen, 100, 200, 400, 500)

    def triangle(pen):
        polygon(pen, [(30, -20), (470, 760), (910, -20)])

    def pointer(pen):
        polygon(pen, [(60, -10), (60, 690), (620, 340)])

    def round_full(pen):
        disc(pen, 420, 340, 340)

    def round_open(pen):
        disc(pen, 420, 340, 340)
        disc(pen, 420, 340, 285, True)

    def diameter(pen):
        round_open(pen)
        polygon(pen, [(60, 20), (740, 700), (780, 660), (100, -20)])

    return [
        ('ballotbox', 0x2610, 880, ballot), ('ballotboxcheck', 0x2611, 880, ballot_checked),
        ('alert', 0x26A0, 940, alert), ('blacksquare', 0x25A0, 880, square),
        ('whitesquare', 0x25A1, 880, ballot), ('smallblacksquare', 0x25AA, 500, small_square),
        ('blacktriangle', 0x25B2, 940, triangle), ('pointer', 0x25B6, 680, pointer),
        ('blackcircle', 0x25CF, 840, round_full), ('whitecircle', 0x25CB, 840, round_open),
        ('diameter', 0x2300, 840, diameter), ('emptyset', 0x2205, 840, diameter),
    ]


def add_glyph(font, name, code, advance, draw):
    pen = TTGlyphPen(None)
    draw(pen)
    glyph = pen.glyph()
    font.setGlyphOrder([*font.getGlyphOrder(), name])
    font['glyf'][name] = glyph
    font['hmtx'][name] = (advance, min(x for x, _ in glyph.coordinates))
    for table in font['cmap'].tables:
        if table.isUnicode():
            table.cmap[code] = name


def rename(font, family, style):
    ps = (family + '-' + style).replace(' ', '')
    keep = {0, 8, 9, 13, 14}
    names = font['name']
    names.names = [n for n in names.names if n.nameID in keep and n.platformID == 3]
    for name_id, text in [(1, family), (2, style), (3, 'Gaugeleaf;1;' + ps), (4, family + ' ' + style),
                          (5, 'Version 1.000'), (6, ps), (16, family), (17, style),
                          (10, 'Changed from IBM Plex; see make_fonts.py')]:
        names.setName(text, name_id, 3, 1, 0x409)


def cut(font, codes, features):
    options = subset.Options()
    options.layout_features = features
    options.name_IDs = ['*']
    options.hinting = False
    options.notdef_outline = True
    options.recalc_timestamp = False
    options.drop_tables += ['DSIG']
    cutter = subset.Subsetter(options)
    cutter.populate(unicodes=codes)
    cutter.subset(font)


def write(font, path):
    font.recalcTimestamp = False
    font.flavor = 'woff2'
    font.save(path)
    print(path, len(font.getGlyphOrder()))


def text_face(source, family, style, out):
    font = TTFont(source, recalcTimestamp=False)
    for table in font['cmap'].tables:
        if table.isUnicode():
            table.cmap.setdefault(0x2215, table.cmap[0x2044])
            table.cmap.setdefault(0x202F, table.cmap[0xA0])
            table.cmap.setdefault(0x2011, table.cmap[0x2010] if 0x2010 in table.cmap else 'hyphen')
    drawn = marks()
    for name, code, advance, draw in drawn:
        add_glyph(font, name, code, advance, draw)
    rename(font, family, style)
    cut(font, WANTED + [code for _, code, _, _ in drawn], ['kern', 'mark', 'ccmp', 'liga', 'case'])
    write(font, out + '.woff2')
    return font


def fraction_face(source, family, style, out, scale, lift):
    """A face whose digits are a fraction's upper or lower figures, standing on the base line."""
    font = TTFont(source, recalcTimestamp=False)
    glyphs = font.getGlyphSet()
    made = {}
    for index, name in enumerate(FIGURES):
        pen = TTGlyphPen(None)
        glyphs[name].draw(TransformPen(pen, (scale, 0, 0, scale, 0, lift)))
        made[0x30 + index] = (pen.glyph(), round(font['hmtx'][name][0] * scale))
    pen = TTGlyphPen(None)
    # The slash overlaps its neighbors' side bearings so that the fraction reads as one figure.
    polygon(pen, [(-62, -80), (0, -80), (242, 790), (180, 790)])
    made[0x2044] = (pen.glyph(), 180)
    for code, (glyph, advance) in made.items():
        name = 'part%04X' % code
        font.setGlyphOrder([*font.getGlyphOrder(), name])
        font['glyf'][name] = glyph
        font['hmtx'][name] = (advance, min(x for x, _ in glyph.coordinates))
        for table in font['cmap'].tables:
            if table.isUnicode():
                table.cmap[code] = name
    # The press takes the height of a face's letters from here; these faces have figures alone.
    font['OS/2'].sCapHeight = round(font['OS/2'].sCapHeight * scale)
    font['OS/2'].sxHeight = 0
    rename(font, family, style)
    for tag in ('GSUB', 'GPOS', 'GDEF'):
        if tag in font:
            del font[tag]
    cut(font, [0x20, *made], [])
    write(font, out + '.woff2')


def slashed_face(source, family, style, out):
    """A face with nothing but the slashed zero, to stand before the text face where a code is set."""
    font = TTFont(source, recalcTimestamp=False)
    for table in font['cmap'].tables:
        if table.isUnicode():
            table.cmap[0x30] = SLASHED
    rename(font, family, style)
    for tag in ('GSUB', 'GPOS', 'GDEF'):
        if tag in font:
            del font[tag]
    cut(font, [0x30], [])
    write(font, out + '.woff2')


def main():
    sans, condensed, out = sys.argv[1:4]
    s = sans + '/fonts/complete/woff2/IBMPlexSans-%s.woff2'
    c = condensed + '/fonts/complete/woff2/IBMPlexSansCondensed-%s.woff2'
    regular = text_face(s % 'Regular', 'Gaugeleaf Sans', 'Regular', out + '/sans-regular')
    regular.flavor = None
    regular.save(out + '/fallback/sans-regular.ttf')
    text_face(s % 'Italic', 'Gaugeleaf Sans', 'Italic', out + '/sans-italic')
    text_face(s % 'SemiBold', 'Gaugeleaf Sans', 'SemiBold', out + '/sans-semibold')
    text_face(c % 'Regular', 'Gaugeleaf Condensed', 'Regular', out + '/condensed-regular')
    text_face(c % 'SemiBold', 'Gaugeleaf Condensed', 'SemiBold', out + '/condensed-semibold')
    for weight in ('Regular', 'SemiBold'):
        slashed_face(s % weight, 'Gaugeleaf Slashed', weight, out + '/slashed-' + weight.lower())
    for weight, heavier, name in [('Regular', 'Medium', 'regular'), ('SemiBold', 'Bold', 'semibold')]:
        fraction_face(c % heavier, 'Gaugeleaf Upper', weight, out + '/upper-' + name, 0.77, 238)
        fraction_face(c % heavier, 'Gaugeleaf Lower', weight, out + '/lower-' + name, 0.77, -62)


main()
