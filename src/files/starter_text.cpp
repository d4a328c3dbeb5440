#include "wetout/files/starter.hpp"

namespace wetout::files {

std::string_view starter_shop() {
  return R"toml(# The shop: what is in it and what the resin's data sheet prints.
# Replace the invented numbers with those of your own data sheets.
# Every quantity carries its unit: "22 C", "72 F", "900 ml", "1/2 gal", "4 oz/yd2".

[shop]
time_zone  = "UTC"                   # yours, e.g. "America/Los_Angeles", "Europe/Lisbon"
currency   = "USD"
units      = "us"                    # us | metric: what is printed; files may mix
air        = "22 C"                  # of the room, when --air does not say
scale_step = "1 g"                   # what your scale shows
cup        = "quart"                 # the cup you usually take
# weather    = "forecast.csv"        # a forecast or a year beside this file: CSV, EPW, JSON

[room]                               # where the board lies
kind = "unheated"                    # outdoors | unheated | heated
lag  = "2.5 h"                       # how far its air is behind that outdoors
# heater = { kind = "electric", minimum = "18 C" }   # of a heated one

[hours]                              # when you can work; a day that is missing is a day off
mon = ["18:00-22:00"]
wed = ["18:00-22:00"]
fri = ["18:00-22:00"]
sat = ["08:00-12:00", "14:00-18:00"]

[[cup]]
id = "quart"
holds = "900 ml"
diameter = "105 mm"
[[cup]]
id = "bucket"                        # taken when the quart does not do
holds = "2.5 l"
diameter = "180 mm"

[[material]]
id = "resin-a"
name = "Laminating resin, part A"
density = "1.13 g/ml"
packs = [ { size = "1 gal", price = "50.00 USD" } ]
[[material]]
id = "hardener-b"
name = "Hardener, part B"
density = "0.97 g/ml"
packs = [ { size = "1/2 gal", price = "35.00 USD" } ]
[[material]]
id = "fin-box"
weight = "28 g"
packs = [ { pieces = 1, price = "9.00 USD" } ]

[[cloth]]
id = "e4"
name = "4 oz E-glass, plain"
weight = "4 oz/yd2"
width = "30 in"                      # of the roll
packs = [ { length = "10 yd", price = "65.00 USD" } ]

[[resin]]                            # what the data sheet prints
id = "epoxy"
chemistry = "epoxy"
part_a = "resin-a"
part_b = "hardener-b"
parts = { by = "volume", a = 2, b = 1 }   # or by = "mass"; tolerance = "3 %" if printed
lowest_air = "15 C"
highest_air = "35 C"
pot_life  = [ { mass = "150 g", air = "25 C", time = "32-38 min" } ]
gel       = [ { air = "25 C", time = "4 h" } ]
tack_free = [ { air = "25 C", time = "5-6 h" } ]
recoat    = [ { air = "25 C", from = "4 h", until = "12 h" } ]
sand      = [ { air = "25 C", time = "24 h" } ]
full_cure = [ { air = "25 C", time = "7 days" } ]

# What your shop loses, once you know it; until then usual values are assumed and listed.
# [losses]
# left_in_cup = "8 g"
# brush = "10 g"
)toml";
}

std::string_view starter_job() {
  return R"toml(# One board and how it is to be glassed. Coats are done in the order they stand here;
# laminates of both faces come before the first hotcoat.

[board]
name = "First board"
length = "6 ft 2 in"                 # also "6' 2\"" or "188 cm"
foam = "eps"                         # eps | xps | pu
foam_density = "2 lb/ft3"            # or core_weight = "2.4 kg", stringer included
stringer_weight = "120 g"
nose = "round"                       # round | point
tail = "square"                      # round | point | square | { shape = "swallow", depth = "4 in" }
rail = { name = "60/40", fullness = "medium" }   # soft | medium | full | square

[board.width]                        # nose12, tail12: 12 in from the end
nose12 = "12 in"
wide = "20 1/2 in"
wide_point = "1 in"                  # from the middle, + toward the nose
tail12 = "15 in"
tail = "6 in"

[board.thickness]
nose12 = "1 1/2 in"
centre = "2 1/2 in"
tail12 = "1 5/8 in"

[board.rocker]                       # from a straight bar that touches at mid-length
nose = "5 in"
nose12 = "2 1/8 in"
tail12 = "7/8 in"
tail = "2 in"

[[coat]]
name = "bottom lam"
face = "bottom"
kind = "laminate"                    # seal | laminate | install | hotcoat | gloss
resin = "epoxy"
laps = "cut"                         # cut | free
[[coat.ply]]
cloth = "e4"
lap = "2 in"                         # finished width past the apex of the rail

[[coat]]
name = "deck lam"
face = "deck"
kind = "laminate"
resin = "epoxy"
laps = "free"
[[coat.ply]]                         # laid first: a patch where you stand
name = "tail patch"
cloth = "e4"
to = "20 in"                         # from the tail
[[coat.ply]]
cloth = "e4"
lap = "2 in"

[[coat]]
name = "fin boxes"
face = "bottom"
kind = "install"
resin = "epoxy"
part = "fin-box"
count = 3
fill = "18 ml"                       # of resin, each
gap = "3 mm"                         # between box and foam

[[coat]]
name = "bottom hotcoat"
face = "bottom"
kind = "hotcoat"
resin = "epoxy"

[[coat]]
name = "deck hotcoat"
face = "deck"
kind = "hotcoat"
resin = "epoxy"
)toml";
}

}  // namespace wetout::files
