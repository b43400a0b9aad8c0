"""Published pitch diameters of gears, and measurements over pins."""

from .drive import pitch_radius
from .gear import over_pins
from .proofs import published, recalled

_CATALOGUE = "Sprocket catalogue, May 2002, sprockets to DIN 8187 / ISO/R 606"
_AT = (
    "github.com/ArtemFilin1990/Mar, 07_Бренды_и_каталоги/Бренды/каталоги/"
    "Каталог-звезд-CHIARAVALLI.md"
)
_TWO = "Two sprocket catalogues, sprockets to DIN 8187 / ISO/R 606"
_TWO_AT = (
    "github.com/ArtemFilin1990/Mar, 07_Бренды_и_каталоги/Бренды/каталоги/"
    "Каталог-звезд-Sati.md, p. 47 and 87; Каталог-звезд-CHIARAVALLI.md beside it"
)
_OWN_WAY = "The catalogue rounds in its own way: some rows are off by more than half a digit."
_BHANDARI = "V. B. Bhandari, Design of Machine Elements, ch. 14, Ex. "
_FOSSEE = "github.com/FOSSEE/Scilab-TBC-Uploads, 764/CH14/"


def _diameter(pitch: float, teeth: int) -> float:
    return 2 * pitch_radius(pitch, teeth)


def _of_pitch(pitch: float) -> object:
    return lambda teeth: _diameter(pitch, teeth)


_TEETH = (("teeth", ""),)
_GEAR = (("pitch", "mm"), ("teeth", ""))

_OF_8 = (
    (17, "43.53"), (18, "46.07"), (19, "48.61"), (20, "51.14"), (21, "53.68"), (22, "56.21"),
    (23, "58.75"), (24, "61.29"), (25, "63.83"), (26, "66.37"), (27, "68.91"), (28, "71.45"),
    (29, "73.99"), (30, "76.53"), (31, "79.08"), (32, "81.61"), (33, "84.16"), (34, "86.70"),
    (35, "89.25"), (36, "91.79"), (37, "94.33"), (38, "96.88"), (39, "99.42"), (40, "101.97"),
    (41, "104.51"), (42, "107.05"), (43, "109.60"), (44, "112.14"), (45, "114.69"), (46, "117.23"),
    (47, "119.77"), (48, "122.32"), (49, "124.86"), (50, "127.41"), (51, "129.95"), (52, "132.49"),
    (53, "135.04"), (54, "137.59"), (55, "140.13"), (56, "142.68"), (57, "145.22"), (58, "147.77"),
    (59, "150.31"), (60, "152.85"),
)  # fmt: skip
_OF_9 = (
    (17, "51.83"), (18, "54.85"), (19, "57.87"), (20, "60.89"), (21, "63.91"), (22, "66.93"),
    (23, "69.95"), (24, "72.97"), (25, "76.00"), (26, "79.02"), (27, "82.04"), (28, "85.07"),
    (30, "91.12"), (32, "97.17"), (34, "103.23"), (35, "106.26"), (36, "109.29"), (38, "115.34"),
    (40, "121.40"), (45, "136.55"), (57, "172.91"), (76, "230.49"), (95, "288.08"),
    (114, "345.68"),
)  # fmt: skip
_OF_12 = (
    (17, "69.11"), (18, "73.14"), (19, "77.16"), (20, "81.19"), (21, "85.22"), (22, "89.24"),
    (23, "93.27"), (24, "97.29"), (25, "101.33"), (26, "105.36"), (27, "109.40"), (28, "113.42"),
    (29, "117.46"), (30, "121.50"), (32, "129.56"), (34, "137.64"), (36, "145.72"), (38, "153.80"),
    (40, "161.87"), (42, "169.95"), (44, "178.03"), (46, "186.10"), (48, "194.18"), (50, "202.26"),
    (52, "210.34"), (54, "218.43"), (56, "226.50"), (58, "234.58"), (60, "242.66"),
)  # fmt: skip

PROOFS = (
    published(
        "drive.pitch_radius", "Pitch diameter, pitch 8 mm", "mm", _TEETH, _of_pitch(8.0),
        _CATALOGUE, _AT, _OF_8, 0.0095, _OWN_WAY,
    ),
    published(
        "drive.pitch_radius", "Pitch diameter, pitch 9.525 mm", "mm", _TEETH, _of_pitch(9.525),
        _TWO, _TWO_AT, _OF_9, 0.0075, _OWN_WAY,
    ),
    published(
        "drive.pitch_radius", "Pitch diameter, pitch 12.7 mm", "mm", _TEETH, _of_pitch(12.7),
        _CATALOGUE, _AT, _OF_12, 0.0105, _OWN_WAY,
    ),
    published(
        "drive.pitch_radius", "Pitch diameter", "mm", _GEAR, _diameter,
        _BHANDARI + "14.4", _FOSSEE + "EX14.4.b/result14_4.txt",
        ((19.05, 17, "103.673741"), (19.05, 34, "206.462975")),
    ),
    published(
        "drive.pitch_radius", "Pitch diameter", "mm", _GEAR, _diameter,
        _BHANDARI + "14.6", _FOSSEE + "EX14.6.b/result14_6.txt",
        ((19.05, 21, "127.816092"), (19.05, 80, "485.228971")),
    ),
    published(
        "drive.pitch_radius", "Pitch diameter", "in", (("pitch", "in"), ("teeth", "")), _diameter,
        "R. L. Mott, Machine Elements in Mechanical Design, 4th ed., Ex. 7-3, p. 295",
        "fliphtml5.com/eraqv/nlwf, p. 311", ((0.5, 17, "2.721"), (0.5, 65, "10.349")),
    ),
    recalled(
        "gear.over_pins", "Measurement over pins", "mm",
        (("pitch", "mm"), ("teeth", ""), ("pin diameter", "mm")),
        lambda pitch, teeth, pin: over_pins(_diameter(pitch, teeth), teeth, pin),
        "ISO 606, cl. 5.3, and ASME B29.1, as recalled; worked out apart from the program", (
            (9.525, 21, 6.35, "70.079"), (9.525, 42, 6.35, "133.809"), (8.0, 19, 5.0, "53.438"),
            (8.0, 38, 5.0, "101.877"),
        ), 0.0006,
        "It shows that the recalled formulas are carried out as recalled, not that they are right.",
    ),
)  # fmt: skip
