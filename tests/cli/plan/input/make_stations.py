"""An ellipsoid of 2 m by 0.5 m by 0.07 m as a job file with N stations."""

import math
import sys

n = int(sys.argv[1])
print('[board]\nname = "Egg"\nlength = "2 m"\nfoam = "eps"\ncore_weight = "2 kg"')
print('nose = "round"\ntail = "round"\nrail = { name = "50/50", fullness = "soft" }')
for i in range(n):
    x = 2.0 * i / (n - 1)
    r = math.sqrt(max(0.0, 1.0 - (x - 1.0) ** 2))
    print(f'[[board.station]]\nat = "{x * 1000:.6f} mm"\nwidth = "{500 * r:.9f} mm"')
    print(f'thickness = "{70 * r:.9f} mm"\nrocker = "{35 * (1 - r):.9f} mm"')
print('[[coat]]\nname = "lam"\nface = "deck"\nkind = "laminate"\nresin = "slow"')
print('[[coat.ply]]\ncloth = "e4"\nlap = "50 mm"')
