"""Block, pit and column judged apart from the engine: every check of building that is not one of the studs, for the twelve made-up
plans in `plans/`. Read are the plans alone, in which every size stands; formulas, tables and factors are typed here from the documents
named beside them. What no document has (a knock, a person on a ladder, the room for a spade) is the plan's own convention and is typed
from its printed words. kN, m and kPa."""

import json
import math
import pathlib

HERE = pathlib.Path(__file__).parent
G = 9.80665
WATER = 9.81  # kN/m3
CLAYS = ("soft_clay", "firm_clay", "stiff_clay", "hard_clay")
SANDS = ("loose_sand", "medium_sand", "dense_sand")
UNFIT = ("peat", "made_ground", "shrinking_clay")
ROCKS = ("weathered_rock", "rock")

# Unit weight above and below water: usual values, BS 8002 and EN 1991-1-1 Annex A have the like (judgement).
WEIGHT = {"soft_clay": (16.5, 17.5), "firm_clay": (18.5, 19.0), "stiff_clay": (19.0, 20.0), "hard_clay": (20.5, 21.0), "silt": (17.5, 18.5),
          "loose_sand": (16.5, 18.5), "medium_sand": (18.0, 19.5), "dense_sand": (19.5, 20.5), "gravel": (20.0, 21.0), "peat": (11.0, 11.5)}
PSF = 0.04788026
# Least and most that tables presume, net, kPa. IBC Table 1806.2: 1500, 2000, 3000 psf; 24 CFR 3285.202: 1000 psf for loose sand, rounded
# up; BS 8004:1986 Table 1 (75, 150, 300, 600; loose sand 100, medium and dense 300); Canada 9.4.4.1 dense silt 100. 25 and 50: judgement.
PRESUMED = {"soft_clay": (25, 75), "firm_clay": (1500 * PSF, 150), "stiff_clay": (1500 * PSF, 300), "hard_clay": (1500 * PSF, 600),
            "silt": (50, 100), "loose_sand": (48, 100), "medium_sand": (2000 * PSF, 300), "dense_sand": (2000 * PSF, 300),
            "gravel": (3000 * PSF, 600)}
# Undrained strength of the clay words, BS 5930; friction of the others, judgement.
UNDRAINED = {"soft_clay": (20, 40), "firm_clay": (40, 75), "stiff_clay": (75, 150), "hard_clay": (150, 300)}
FRICTION = {"silt": (28, 32), "loose_sand": (28, 32), "medium_sand": (30, 35), "dense_sand": (33, 38), "gravel": (35, 40)}
# EN 1997-1 Annex A, Tables A.3 to A.5: weight, variable action, tan phi, cu, bearing. Each weight as it is unfavourable and favourable.
APPROACHES = [(1.35, 1.5, 1, 1, 1), (1, 1.5, 1, 1, 1), (1, 1.3, 1.25, 1.4, 1), (1.35, 1.5, 1, 1, 1.4), (1, 1.5, 1, 1, 1.4),
              (1.35, 1.5, 1.25, 1.4, 1), (1, 1.5, 1.25, 1.4, 1), (1, 1.3, 1.25, 1.4, 1)]


class Site:
    """The ground beside and below the block."""

    def __init__(self, plan):
        site, block = plan["site"], plan["block"]
        self.site, self.soil = site, site["soil"]
        self.depth, self.water = block["depth_m"], site.get("groundwater_depth_m")
        said = site.get("unit_weight_kn_m3")
        self.moist, self.wet = (said, said) if said else WEIGHT[self.soil]
        self.on_rock = site.get("rock_depth_m", math.inf) <= self.depth + 1e-6
        self.seeps = self.water is not None and self.water < self.depth

    def stress(self, depth):
        """Effective stress of the soil at a depth."""
        dry = depth if self.water is None else min(depth, self.water)
        return self.moist * dry + (self.wet - WATER) * (depth - dry)

    def below(self, breadth, best):
        """Weight of the soil below the base: buoyant at the water, moist a breadth above it; not known: water at the base at worst."""
        water = self.water if self.water is not None else (math.inf if best else self.depth)
        dry = min(max((water - self.depth) / breadth, 0), 1)
        return self.moist * dry + (self.wet - WATER) * (1 - dry)

    def frost(self):
        """Depth of frost, stated or by the modified Berggren equation (UFC 3-130-06): Stefan's depth by the lambda of Neumann's solution."""
        site = self.site
        if "frost_depth_m" in site:
            return site["frost_depth_m"]
        if "freezing_index_c_days" not in site:
            return 0.8
        # Silt: dry 1500 kg/m3, water 0.22, frozen conductivity 1.7 W/mK (range of Kersten 1949).
        dry, water, conductivity = {"silt": (1500, 0.22, 1.7)}[self.soil]
        index, mean = site["freezing_index_c_days"], site["mean_annual_temperature_c"]
        heat = 334e3 * dry * water
        surface = 0.9 * index  # a shaded surface clear of snow
        stefan = math.sqrt(2 * conductivity * surface * 86400 / heat)
        # The year as a wave about its mean: the season is so long that the cold part's sum is the index.
        cold = lambda swing: 365 / math.pi * (math.sqrt(swing**2 - mean**2) - mean * math.acos(mean / swing))
        swing = root(lambda swing: cold(swing) - index, mean, 100)
        days = 365 / math.pi * math.acos(mean / swing)
        capacity = dry * 4187 * (0.17 + 0.75 * water)
        alpha, mu = mean * days / surface, surface / days * capacity / heat
        flow = lambda g: math.exp(-g * g) * (1 / math.erf(g) - alpha / math.erfc(g)) - g * math.sqrt(math.pi) / mu
        return stefan * root(lambda g: -flow(g), 1e-6, math.sqrt(mu / 2)) * math.sqrt(2 / mu)


def root(rising, low, high):
    for _ in range(200):
        middle = (low + high) / 2
        low, high = (middle, high) if rising(middle) < 0 else (low, middle)
    return high


class Column:
    """Tube, fill and plates."""

    def __init__(self, pier):
        self.pier, self.height = pier, pier["height_m"]
        self.d, self.t = pier["outside_diameter_mm"] / 1e3, pier["wall_mm"] / 1e3
        self.bore = self.d - 2 * self.t
        self.area = math.pi / 4 * (self.d**2 - self.bore**2)
        self.inertia = math.pi / 64 * (self.d**4 - self.bore**4)
        self.fill = pier.get("fill", "none")
        density = {"none": 0, "sand": 1600, "concrete": 2400}[self.fill]
        plate = lambda side, thick: 7850 * side**2 * thick / 1e9
        plates = pier["plate_thickness_mm"] + pier["top_plate_thickness_mm"]
        shaft = (7850 * self.area + density * math.pi / 4 * self.bore**2) * (self.height - plates / 1e3)
        self.mass = (shaft + plate(pier["plate_side_mm"], pier["plate_thickness_mm"])
                     + plate(pier["top_plate_side_mm"], pier["top_plate_thickness_mm"]))

    def strength(self, loads):
        """EN 1993-1-1: N/(chi A fy) + M/(W fy), curve c, a cantilever of twice its height; EI of concrete by EN 1994-1-1 with 0.6 Ecm."""
        fy = {"S235": 235e3, "S275": 275e3, "S355": 355e3}[self.pier["steel"]]
        if self.d / self.t > 90 * 235e3 / fy:
            return None
        stiffness = 210e6 * self.inertia + (0.6 * 31e6 * math.pi / 64 * self.bore**4 if self.fill == "concrete" else 0)
        critical = math.pi**2 * stiffness / (2 * self.height) ** 2
        slender = math.sqrt(self.area * fy / critical)
        phi = 0.5 * (1 + 0.49 * (slender - 0.2) + slender**2)
        chi = 1 if slender <= 0.2 else min(1, 1 / (phi + math.sqrt(phi**2 - slender**2)))
        squash, bend = chi * self.area * fy, self.inertia / (self.d / 2) * fy
        # The load that uses most, which need not be the one that bends most: a climber also weighs.
        return max(1.35 * weight / squash + factor * moment / bend for _, _, moment, weight, factor in loads)


def loads_of(plan, column):
    """Name, push, moment at the foot, weight, factor of EN 1990 Table A1.2(B): 1.5, for an accident 1."""
    load, site = plan["load"], plan["site"]
    weight = (column.mass + load["mass_kg"]) * G / 1e3
    h, centre = column.height, column.height + load["centre_above_pier_m"]
    v, d = site["design_gust_m_s"], column.d
    # EN 1991-1-4 Figure 7.28 for a slightly rough tube, k/b 0.001, and never less than the 1.2 of Re 2e5 pushed on its way up.
    reynolds = v * d / 15e-6
    curve = 1.2 if reynolds < 2e5 else max(0.4, min(1.2, 1.2 + 0.18 * math.log10(0.01) / (1 + 0.4 * math.log10(reynolds / 1e6))))
    drag = max(curve, 1.2 * min(1, (2e5 / reynolds) ** 2))
    pressure = 0.5 * 1.25 * v**2 / 1e3
    tube, top = drag * pressure * d * h, 1.2 * pressure * load["wind_area_m2"]
    roofed = load["enclosure"] != "open"  # the storm that catches the roof open is an accident
    climber = 0.120 * G
    return [
        ("rest", 0, 0, weight, 1.5),
        ("leaning", 0.5, 0.5 * centre, weight, 1.5),  # EN 1991-1-1 Table 6.12
        ("gust", tube + top, tube * h / 2 + top * centre, weight, 1.0 if roofed else 1.5),
        # A ladder at four up to one out, hung 0.4 m outside the column.
        ("ladder", climber / 4, climber / 4 * h + climber * (d / 2 + 0.4), weight + climber, 1.5),
        ("knock", 1.0, min(h, 1.0), weight, 1.0),
    ]


def bearing_resistance(V, H, M, B, L, q, gamma, slope, cu=None, phi=None):
    """EN 1997-1 Annex D; on a slope the less of Vesic's and Hansen's factors, for clay N_gamma = -2 sin(slope)."""
    along = B - 2 * M / V
    if along <= 0:
        return 0
    short, long, area = min(along, L), max(along, L), along * L
    beta = math.radians(slope)
    falls = min((1 - math.tan(beta)) ** 2, (1 - 0.5 * math.tan(beta)) ** 5)
    if cu is not None:
        inclined = 0.5 * (1 + math.sqrt(1 - H / (area * cu)))
        cohesion = (math.pi + 2) * cu * (1 + 0.2 * short / long) * inclined * (1 - slope / 147)
        return area * (cohesion - gamma * short * math.sin(beta) + q * falls)
    tan, sin = math.tan(phi), math.sin(phi)
    nq = math.exp(math.pi * tan) * (1 + sin) / (1 - sin)
    ngamma = 2 * (nq - 1) * tan
    m = (2 + short / long) / (1 + short / long)
    left = 1 - H / V
    return area * falls * (q * nq * (1 + short / long * sin) * left**m + 0.5 * gamma * short * ngamma * (1 - 0.3 * short / long) * left ** (m + 1))


def says(demand, capacity, soft=False):
    if demand <= capacity * (1 + 1e-9) + 1e-12:
        return "yes"
    return "ask" if soft else "no"


class Judge:
    def __init__(self, plan):
        self.plan, self.checks = plan, {}
        self.ground, self.column = Site(plan), Column(plan["pier"])
        self.loads = loads_of(plan, self.column)
        block, pier = plan["block"], plan["pier"]
        self.B, self.L = sorted((block["length_m"], block["width_m"]))
        self.D, self.height = block["depth_m"], block["depth_m"] + block["upstand_m"]
        self.block_weight = self.B * self.L * self.height * 2.4 * G
        self.N = self.block_weight + self.loads[0][3]
        water = self.ground.water
        self.U = 0 if water is None else WATER * self.B * self.L * max(self.D - water, 0)
        foot = self.height + pier["gap_mm"] / 1e3
        # A knock is over before the ground gives way; it tips and slides all the same.
        self.cases = [(name, push, moment + push * foot, factor) for name, push, moment, _, factor in self.loads]
        self.lasting = [case for case in self.cases if case[0] != "knock"]
        self.worst = max(case[2] for case in self.lasting)
        self.unsure = self.tree() is not None and self.tree()[0] > self.tree()[1]

    def put(self, name, demand, capacity, soft=False, said=None):
        self.checks[name] = {"demand": demand, "capacity": capacity, "says": said or says(demand, capacity, soft)}

    def unknown(self, name):
        self.checks[name] = {"demand": None, "capacity": None, "says": "ask"}

    def tree(self):
        """Reach of the roots and distance of the trunk: a house warranty standard, chapter 4.2."""
        site = self.plan["site"]
        if "tree_distance_m" not in site or self.ground.soil not in CLAYS + ("silt", "shrinking_clay"):
            return None
        share = {"high": 1.25, "moderate": 0.75, "low": 0.5}[site.get("tree_water_demand", "high")]
        return share * site.get("tree_height_m", 15), site["tree_distance_m"]

    def surroundings(self):
        site, soil = self.plan["site"], self.ground.soil
        if soil in UNFIT:
            self.unknown("ground.bearing_known")
            self.unknown("ground.stiffness_known")
        if self.tree():
            self.put("ground.tree", *self.tree(), soft=True)
        if "slope_deg" in site and soil not in UNFIT:
            self.put("ground.slope", site["slope_deg"], 8 if soil in CLAYS else 18, soft=True)
        if "bank_distance_m" in site:
            self.put("ground.bank", site.get("bank_height_m", 1.5), site["bank_distance_m"], soft=True)

    def bearing(self):
        ground, soil, V = self.ground, self.ground.soil, self.N - self.U
        e = self.worst / V
        self.put("block.eccentricity", e, self.B / 3, soft=True)
        if soil in UNFIT:
            self.unknown("block.bearing")
            return
        slope, q = self.plan["site"].get("slope_deg", 0), ground.stress(self.D)
        tan = math.tan(math.radians(slope))
        falls = 1 - slope / 147 if soil in CLAYS else min((1 - tan) ** 2, (1 - 0.5 * tan) ** 5)
        low, high = (falls * value for value in PRESUMED[soil])
        if soil in SANDS + ("gravel",):  # Canada 9.4.4.3: half with water within a breadth below the base
            near = ground.water is not None and ground.water < self.D + self.B
            low, high = low / 2 if near or ground.water is None else low, high / 2 if near else high
        net = max(0, V / ((self.B - 2 * e) * self.L) - q)
        said = "yes" if net <= low else "ask" if net <= high else "no"
        self.put("block.bearing", net, low, said="ask" if self.unsure else said)
        ends = [self.resisted(V, q, slope, best) for best in (False, True)]
        demand, capacity = ends[0]
        said = "yes" if demand <= capacity else "ask" if ends[1][0] <= ends[1][1] else "no"
        self.put("block.effective_bearing", demand, capacity, said="ask" if self.unsure else said)

    def resisted(self, V, q, slope, best):
        """Load and resistance of the approach and case that use most."""
        soil, found = self.ground.soil, []
        gamma = self.ground.below(self.B, best)
        for weight, variable, on_tan, on_cu, on_bearing in APPROACHES:
            for _, push, moment, factor in self.lasting:
                times = min(variable, factor)
                acting = (V * weight, push * times, moment * times, self.B, self.L, q, gamma, slope)
                if soil in UNDRAINED:
                    resistance = bearing_resistance(*acting, cu=UNDRAINED[soil][best] / on_cu)
                else:
                    resistance = bearing_resistance(*acting, phi=math.atan(math.tan(math.radians(FRICTION[soil][best])) / on_tan))
                found.append((V * weight, resistance / on_bearing))
        return max(found, key=lambda pair: pair[0] / pair[1])

    def stability(self):
        """EN 1997-1 Table A.1 (EQU): weight 0.9, lift 1.1; grip of IBC Table 1806.2; Table A.15 (UPL): weight 0.9, lift 1."""
        hold = 0.9 * self.N - 1.1 * self.U
        self.put("block.overturning", max(moment * factor for _, _, moment, factor in self.cases), hold * self.B / 2)
        push, soil = max(push * factor for _, push, _, factor in self.cases), self.ground.soil
        if soil in UNFIT:
            self.unknown("block.sliding")
        else:
            grip = {"gravel": 0.35, **dict.fromkeys(SANDS, 0.25)}.get(soil)
            adhesion = min(130 * PSF * self.B * self.L, hold / 2)
            self.put("block.sliding", push, adhesion if grip is None else grip * hold)
        self.put("block.buoyancy", self.U, 0.9 * self.block_weight)

    def frost(self):
        ground, soil = self.ground, self.ground.soil
        goes = ground.frost()
        if not ground.on_rock:
            self.put("block.frost", goes, self.D)
        # Gravel does not heave (ZTVE-StB F1). Frozen ground grips no more of a side than there is.
        grips = 0 if soil in ("gravel", "rock") else min(goes, self.D)
        remedy = self.plan["block"].get("frost_remedy", "none")
        middle, high = (20, 25) if remedy in ("sleeve", "gravel") else (65, 100)  # Canadian Foundation Engineering Manual
        frozen = min(grips, 0.10) if remedy == "insulation" else grips
        around = 2 * (self.B + self.L)
        if soil in CLAYS:
            adhesion = min(25, UNDRAINED[soil][0] / 2)
        elif soil in SANDS + ("gravel",):
            adhesion = 0.2 * ground.stress((frozen + self.D) / 2)
        else:
            adhesion = {"silt": 12}.get(soil, 0)
        hold = 0.9 * self.N - self.U + adhesion * around * (self.D - frozen)
        lift, most = middle * around * frozen, high * around * frozen
        soft = remedy == "insulation" or soil in UNFIT or lift <= hold
        self.put("block.adfreeze", most, hold, soft=soft)

    def rock(self):
        if not self.ground.on_rock:
            return
        block, site = self.plan["block"], self.plan["site"]
        count, d, length = block["dowel_count"], block["dowel_diameter_mm"], block["dowel_length_mm"]
        V = self.N - self.U
        row = max(1.5 * self.worst - 0.9 * V * self.B / 2, self.worst - V * self.B / 6, 0)
        tension = row / (self.B - 0.3) / (count // 2)
        area = math.pi / 4 * d**2
        # PTI's low ends over three; a hole 9 mm wider than the bar; bar to grout 2.7 MPa (EN 1992-1-1 8.4.2, C25/30).
        bond = {"granite_or_basalt": 1.7, "dolomite": 1.4, "soft_limestone": 1.0, "sandstone": 0.8}.get(site.get("rock_kind"), 0.2) / 3
        pull = min(area * 500 / 1.15, math.pi * d * length * 2.7, math.pi * (d + 9) * length * bond) / 1e3
        untested = tension > 0 and block.get("dowel_proof_kn", 0) < 1.25 * tension
        self.put("block.dowels", tension, pull, said="ask" if untested and tension <= pull else None)
        fc = float(block["concrete"][1:3])
        one = min(1.6 * area * math.sqrt(fc * 500), area * 500 / math.sqrt(3)) / 1.5 / 1e3  # fib Model Code 2010
        self.put("block.dowel_shear", 1.5 * max(push * factor for _, push, _, factor in self.cases), count * one)

    def fits(self):
        block, pier, celsius = self.plan["block"], self.plan["pier"], self.plan["work"]["temperature_c"]
        anchors = self.plan["anchors"]
        self.put("block.plate_fits", pier["plate_side_mm"] + 100, 1e3 * self.B)
        self.put("block.cold", 5, celsius, said="no" if celsius < 5 else "ask" if celsius < 10 else "yes")
        if celsius > 25:
            self.put("block.hot", celsius, 35)
        count, bore = block["duct_count"], 1e3 * self.column.bore
        # So many equal circles in the least circle round them.
        packed = {2: 2, 3: 1 + 2 / math.sqrt(3), 4: 1 + math.sqrt(2)}[count] * (block["duct_diameter_mm"] + 6)
        self.put("block.ducts", packed, min(bore, anchors["circle_diameter_mm"] - anchors["hole_diameter_mm"] - 100))
        self.put("pier.top_plate", pier["top_bolt_circle_mm"] + 2 * 1.2 * 13, pier["top_plate_side_mm"])  # EN 1993-1-8 Table 3.3
        self.put("pier.base_plate", pier["outside_diameter_mm"] + 2 * pier["weld_leg_mm"], pier["plate_side_mm"])
        self.put("pier.bore", 1.15 * min(count, 3) * block["duct_diameter_mm"], bore)
        used = self.column.strength(self.loads)
        self.unknown("pier.strength") if used is None else self.put("pier.strength", used, 1)
        self.sight()

    def sight(self):
        """Plane geometry: the lower edge of the beam over the wall's edge."""
        pier, load, floor = self.plan["pier"], self.plan["load"], self.plan.get("floor", {})
        axis = self.height - self.D + pier["gap_mm"] / 1e3 + pier["height_m"] + load["centre_above_pier_m"] - floor.get("level_m", 0)
        for towards in ("north", "east", "south", "west"):
            wanted = pier.get(f"lowest_altitude_{towards}_deg")
            if wanted is not None:
                rise, away = pier["wall_height_m"] - axis, pier["wall_distance_m"]
                beam = math.asin(load["aperture_mm"] / 2e3 / math.hypot(rise, away))
                self.put(f"pier.sight_{towards}", math.degrees(math.atan2(rise, away) + beam), wanted)
        if "swing_radius_m" in pier:
            self.put("pier.swing_floor", pier["swing_radius_m"], axis)
            self.put("pier.swing_wall", pier["swing_radius_m"], pier["wall_distance_m"])

    def pit(self):
        """29 CFR 1926 Subpart P: slopes of Table B-1, 5 ft without protection, 20 ft for the table."""
        pit, block, site, ground = self.plan["excavation"], self.plan["block"], self.plan["site"], self.ground
        sloped, soil = pit["sides"] == "sloped", ground.soil
        run = 0 if not sloped else 1.0 if soil in ("firm_clay", "stiff_clay", "hard_clay") and not ground.seeps else 1.5
        space = pit["working_space_m"] if sloped else 0
        top = [block[side] + 2 * space + 2 * run * self.D for side in ("length_m", "width_m")]
        for name, size, room in zip(("length", "width"), top, (pit["max_length_m"], pit["max_width_m"])):
            self.put(f"excavation.{name}", size, room)
        deepest = pit["max_depth_m"]
        if 0.3 <= site.get("rock_depth_m", math.inf) < deepest:
            deepest = site["rock_depth_m"]
        if ground.water is not None:
            deepest = min(deepest, max(0.3, ground.water - 0.1))
        if run:
            deepest = min(deepest, max(0.3, (min(pit["max_length_m"], pit["max_width_m"]) - 2 * space - 0.8) / (2 * run)))
        self.put("excavation.depth", self.D, deepest)
        self.put("excavation.sides", self.D, 20 * 0.3048 if sloped else 5 * 0.3048)
        if ground.water is not None:
            self.put("excavation.dry", self.D, ground.water)
        if "topsoil_depth_m" in site:
            self.put("excavation.topsoil", site["topsoil_depth_m"], self.D)
        if "rock_depth_m" in site:
            self.put("excavation.rock", self.D, site["rock_depth_m"])
        self.neighbours(top)
        if not sloped:
            self.face()

    def neighbours(self, top):
        site, ground = self.plan["site"], self.ground
        if "building_distance_m" in site:
            flat = 2 if ground.soil in SANDS + ("gravel", "silt") or ground.seeps else 1
            needed = flat * max(0, self.D - site.get("building_footing_depth_m", 0.3))
            clear = site["building_distance_m"] - max(top) / 2
            said = "no" if clear < needed else "ask" if needed > 0 and clear < needed + 1 else "yes"
            self.put("excavation.building", needed, clear, said=said)
        if "drain_distance_m" in site:
            self.put("excavation.drain", 0.5, site["drain_distance_m"] - math.hypot(*top) / 2)

    def face(self):
        """A vertical face: never in grains, fill or seepage; clay to (2.67 cu/1.5 - 5 kPa)/gamma, at most 1.2 m (Terzaghi, DIN 4124)."""
        soil, ground = self.ground.soil, self.ground
        if soil in SANDS + ("gravel",) + UNFIT or ground.seeps:
            self.put("excavation.face", self.D, 0.6, soft=True)
            return
        height = 1.2
        if soil in UNDRAINED:
            height = min(height, (8 / 3 * UNDRAINED[soil][0] / 1.5 - 5) / ground.moist)
        said = "ask" if soil in ("soft_clay", "silt") and self.D > 0.6 else None
        self.put("excavation.face", self.D, height, soft=True, said=said)

    def floor(self):
        floor, block, pier = self.plan.get("floor", {}), self.plan["block"], self.plan["pier"]
        kind = floor.get("kind", "ground")
        if kind == "ground":
            return
        deck = kind == "deck"
        self.put("floor.gap", 20 if deck else 10, floor["gap_mm"])
        under = floor["level_m"] - (0.18 if deck else floor["slab_thickness_mm"] / 1e3)
        plate_top = block["upstand_m"] + (pier["gap_mm"] + pier["plate_thickness_mm"]) / 1e3
        if under < block["upstand_m"] + 0.02:
            hole = (block["length_m"], block["width_m"])
        else:
            hole = (pier["plate_side_mm" if under < plate_top else "outside_diameter_mm"] / 1e3,) * 2
        gap = 2 * floor["gap_mm"] / 1e3
        self.put("floor.room", 0.5, max((floor["length_m"] - hole[0] - gap) / 2, (floor["width_m"] - hole[1] - gap) / 2))
        if deck:
            beyond = lambda post: math.hypot(max(abs(post[0]) - block["length_m"] / 2, 0), max(abs(post[1]) - block["width_m"] / 2, 0))
            self.put("floor.posts", 0.15, min(map(beyond, floor["supports"])))
            self.put("floor.level", 0.02, under - block["upstand_m"])

    def all(self):
        for part in (self.surroundings, self.bearing, self.stability, self.frost, self.rock, self.fits, self.pit, self.floor):
            part()
        return self.checks


plans = sorted((HERE / "plans").glob("*.json"))
values = {path.stem: Judge(json.loads(path.read_text())).all() for path in plans}
(HERE / "block_again.json").write_text(json.dumps(values, indent=1) + "\n")
