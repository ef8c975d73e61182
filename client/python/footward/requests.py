# Written from the contract by .ci/generate. Do not edit.
"""The requests of the contract, as typed dictionaries.

They are for editors and type checkers: any dictionary with these names will do. The
unit of a field stands in its name."""

from __future__ import annotations

from typing import Literal, TypedDict

# Detail says how much of the answer is sent.
Detail = Literal[
    # The same as DETAIL_LIMIT_STATES.
    "DETAIL_UNSPECIFIED",
    # Verdict, governing limit state, its utilization and the codes of the
    # notices: for the many variants of a search.
    "DETAIL_GOVERNING",
    # Also every limit state, the notices in words and the factors used.
    "DETAIL_LIMIT_STATES",
    # Also the derivation, step by step.
    "DETAIL_DERIVATION",
]

# TimberKind is what a timber is made of.
TimberKind = Literal[
    # Not stated: refused where properties are given.
    "TIMBER_KIND_UNSPECIFIED",
    # Solid timber, softwood.
    "TIMBER_KIND_SOLID_SOFTWOOD",
    # Glued laminated timber, softwood.
    "TIMBER_KIND_GLUED_LAMINATED",
    # Solid timber, hardwood.
    "TIMBER_KIND_SOLID_HARDWOOD",
]

# GrainDirection says how timber is pressed.
GrainDirection = Literal[
    # Not stated: refused.
    "GRAIN_DIRECTION_UNSPECIFIED",
    # Along the grain: the end of a column.
    "GRAIN_DIRECTION_ALONG",
    # Across the grain: a sill, sleeper or beam.
    "GRAIN_DIRECTION_ACROSS",
]

# ServiceClass is the moisture class of EN 1995-1-1 2.3.1.3.
ServiceClass = Literal[
    # Not stated: refused with the Eurocode; with the US bases treated as class 3
    # (wet service).
    "SERVICE_CLASS_UNSPECIFIED",
    # Heated indoors.
    "SERVICE_CLASS_1",
    # Covered, outdoors.
    "SERVICE_CLASS_2",
    # Exposed or wet; wet service in the NDS.
    "SERVICE_CLASS_3",
]

# LoadDuration is the duration class of EN 1995-1-1 Table 2.1 of the shortest
# action in the combination.
LoadDuration = Literal[
    # Not stated: treated as permanent, the most cautious, and a notice says so.
    "LOAD_DURATION_UNSPECIFIED",
    # More than ten years.
    "LOAD_DURATION_PERMANENT",
    # Six months to ten years.
    "LOAD_DURATION_LONG_TERM",
    # A week to six months.
    "LOAD_DURATION_MEDIUM_TERM",
    # Less than a week.
    "LOAD_DURATION_SHORT_TERM",
    # Instantaneous.
    "LOAD_DURATION_INSTANTANEOUS",
]

# AcrossGrainSupport is the way a member pressed across its grain is held.
AcrossGrainSupport = Literal[
    # Not stated: k_c,90 = 1.
    "ACROSS_GRAIN_SUPPORT_UNSPECIFIED",
    # On a continuous support below (EN 1995-1-1 Figure 6.2a).
    "ACROSS_GRAIN_SUPPORT_CONTINUOUS",
    # On discrete supports (EN 1995-1-1 Figure 6.2b).
    "ACROSS_GRAIN_SUPPORT_DISCRETE",
]

# GivenMedium is what a given pressure rests on.
GivenMedium = Literal[
    # Not stated: refused.
    "GIVEN_MEDIUM_UNSPECIFIED",
    # Compacted granular fill, held by rings or a bed.
    "GIVEN_MEDIUM_GRANULAR_FILL",
    # Masonry, stone or any other medium.
    "GIVEN_MEDIUM_OTHER",
]

# CorrosiveGround is a row of EN 1993-5:2007 Table 4-1 (from memory).
CorrosiveGround = Literal[
    # The rate is given.
    "CORROSIVE_GROUND_UNSPECIFIED",
    # Undisturbed natural soil: sand, silt, clay, schist.
    "CORROSIVE_GROUND_UNDISTURBED_NATURAL",
    # Polluted natural soil and industrial sites.
    "CORROSIVE_GROUND_POLLUTED_NATURAL",
    # Aggressive natural soil: swamp, marsh, peat.
    "CORROSIVE_GROUND_AGGRESSIVE_NATURAL",
    # Fill, not compacted and not aggressive: clay, schist, sand, silt.
    "CORROSIVE_GROUND_LOOSE_FILL",
    # Fill, not compacted and aggressive: ashes, slag.
    "CORROSIVE_GROUND_LOOSE_AGGRESSIVE_FILL",
    # Fill, compacted and not aggressive: half of the loss.
    "CORROSIVE_GROUND_COMPACTED_FILL",
    # Fill, compacted and aggressive: half of the loss.
    "CORROSIVE_GROUND_COMPACTED_AGGRESSIVE_FILL",
]

# FootprintStiffness says whether the plate can bend under the footprint.
FootprintStiffness = Literal[
    # Not known: treated as soft, and a notice says so.
    "FOOTPRINT_STIFFNESS_UNSPECIFIED",
    # Stiff: a steel section or stub welded all round; the plate bends only
    # outside it.
    "FOOTPRINT_STIFFNESS_STIFF",
    # Soft: a timber end, thin brackets; the plate's centre is checked too.
    "FOOTPRINT_STIFFNESS_SOFT",
]

# ThreadMaking says how the threads were made.
ThreadMaking = Literal[
    # Not known: treated as cut on site, and a notice says so.
    "THREAD_MAKING_UNSPECIFIED",
    # By the product standard: full resistance.
    "THREAD_MAKING_STANDARD",
    # Cut on site or otherwise outside EN 1090: 0.85 of the resistance by
    # Eurocode (EN 1993-1-8 3.6.1(3)).
    "THREAD_MAKING_CUT_ON_SITE",
]

# WeldKind is the kind of weld.
WeldKind = Literal[
    # Not stated: refused.
    "WELD_KIND_UNSPECIFIED",
    # Fillet weld with equal legs.
    "WELD_KIND_FILLET",
    # Partial-joint-penetration groove (butt) weld.
    "WELD_KIND_PARTIAL_PENETRATION",
    # Complete-joint-penetration groove (butt) weld.
    "WELD_KIND_COMPLETE_PENETRATION",
]

# WeldGroupMethod is the way in which a group shares its actions.
WeldGroupMethod = Literal[
    # The same as WELD_GROUP_METHOD_ELASTIC.
    "WELD_GROUP_METHOD_UNSPECIFIED",
    # Elastic vector method, all six actions.
    "WELD_GROUP_METHOD_ELASTIC",
    # Instantaneous centre of rotation: V_x, V_y and T only; fillet welds, US
    # bases. With the Eurocode out of scope.
    "WELD_GROUP_METHOD_INSTANTANEOUS_CENTRE",
]

# PinKind is what the pins of a column foot are.
PinKind = Literal[
    # Not stated: refused.
    "PIN_KIND_UNSPECIFIED",
    # Bolts, in holes with clearance.
    "PIN_KIND_BOLT",
    # Dowels: plain bars in tight holes of the timber.
    "PIN_KIND_DOWEL",
]

# PinPlates is where the steel of a pinned column foot is.
PinPlates = Literal[
    # Not stated: refused.
    "PIN_PLATES_UNSPECIFIED",
    # Two plates of the shoe with the column between them.
    "PIN_PLATES_OUTSIDE",
    # One plate in a slot of the column.
    "PIN_PLATES_INSIDE",
    # Two plates outside and one in a slot: four shear planes in a pin, which is
    # answered OUT OF SCOPE.
    "PIN_PLATES_OUTSIDE_AND_INSIDE",
]

# BracketWeldLines is where the weld at the foot of a shoe's plates lies. A
# complete-penetration weld counts in the middle of each plate whatever is said.
BracketWeldLines = Literal[
    # Not stated: refused.
    "BRACKET_WELD_LINES_UNSPECIFIED",
    # Along both faces of each plate.
    "BRACKET_WELD_LINES_BOTH_FACES",
    # Along one face of each plate: the outer one where there are two plates.
    "BRACKET_WELD_LINES_ONE_FACE",
]

# StressSpread is how stress goes down into clay.
StressSpread = Literal[
    # The same as STRESS_SPREAD_BOUSSINESQ.
    "STRESS_SPREAD_UNSPECIFIED",
    # By Boussinesq, under the centre.
    "STRESS_SPREAD_BOUSSINESQ",
    # The mean, spreading 1 across for 2 down.
    "STRESS_SPREAD_TWO_TO_ONE",
]

# DesignApproach is a design approach of EN 1997-1.
DesignApproach = Literal[
    # Never sent; refused.
    "DESIGN_APPROACH_UNSPECIFIED",
    # Design approach 1, combination 1: A1 + M1 + R1.
    "DESIGN_APPROACH_1_1",
    # Design approach 1, combination 2: A2 + M2 + R1.
    "DESIGN_APPROACH_1_2",
    # Design approach 2*: A1 + M1 + R2, factors on the effects.
    "DESIGN_APPROACH_2",
    # Design approach 3: A1 + M2 + R3.
    "DESIGN_APPROACH_3",
]

# BearingAuthor is whose set of bearing factors the US bases take. Sets are
# never mixed.
BearingAuthor = Literal[
    # Not stated: refused with the US bases.
    "BEARING_AUTHOR_UNSPECIFIED",
    # Terzaghi: no factors for inclined loads, which are out of scope.
    "BEARING_AUTHOR_TERZAGHI",
    # Meyerhof.
    "BEARING_AUTHOR_MEYERHOF",
    # Hansen.
    "BEARING_AUTHOR_HANSEN",
    # Vesic.
    "BEARING_AUTHOR_VESIC",
]

# RingKind is what a ring is made of.
RingKind = Literal[
    # Not stated: refused.
    "RING_KIND_UNSPECIFIED",
    # Steel.
    "RING_KIND_STEEL",
    # Concrete.
    "RING_KIND_CONCRETE",
    # Geocell.
    "RING_KIND_GEOCELL",
    # Worn-out vehicle tyre; strength and stiffness only from a test of that type.
    "RING_KIND_TYRE",
    # Anything else.
    "RING_KIND_OTHER",
]

# CompactionGrade is how well granular fill is compacted (AASHTO LRFD Table
# 12.12.3.5-1, from memory).
CompactionGrade = Literal[
    # Not stated: the modulus is given, or settlement is not found.
    "COMPACTION_GRADE_UNSPECIFIED",
    # Sn-100.
    "COMPACTION_GRADE_SN_100",
    # Sn-95.
    "COMPACTION_GRADE_SN_95",
    # Sn-90; hand-rammed fill is no better unless its density is tested.
    "COMPACTION_GRADE_SN_90",
    # Sn-85.
    "COMPACTION_GRADE_SN_85",
]

# ActionKind is what an action is.
ActionKind = Literal[
    # Not stated: refused.
    "ACTION_KIND_UNSPECIFIED",
    # Self-weight and other permanent actions; D.
    "ACTION_KIND_PERMANENT",
    # Imposed on floors, by its category; L.
    "ACTION_KIND_IMPOSED",
    # Imposed on a roof that is not used, category H; L_r.
    "ACTION_KIND_IMPOSED_ROOF",
    # Snow, by its site; S.
    "ACTION_KIND_SNOW",
    # Wind; W.
    "ACTION_KIND_WIND",
    # Rain on a roof; R. US bases only.
    "ACTION_KIND_RAIN",
    # Temperature. Eurocode only.
    "ACTION_KIND_TEMPERATURE",
    # Accidental, such as impact. Eurocode only.
    "ACTION_KIND_ACCIDENTAL",
]

# ImposedCategory is the category of an imposed action by EN 1990 Table A1.1.
ImposedCategory = Literal[
    # Not stated: refused for imposed actions with the Eurocode, unless psi
    # factors are given.
    "IMPOSED_CATEGORY_UNSPECIFIED",
    # Dwellings.
    "IMPOSED_CATEGORY_A",
    # Offices.
    "IMPOSED_CATEGORY_B",
    # Where people gather.
    "IMPOSED_CATEGORY_C",
    # Shops.
    "IMPOSED_CATEGORY_D",
    # Storage.
    "IMPOSED_CATEGORY_E",
    # Traffic of vehicles up to 30 kN.
    "IMPOSED_CATEGORY_F",
    # Traffic of vehicles over 30 kN up to 160 kN.
    "IMPOSED_CATEGORY_G",
]

# SnowSite is where snow lies, by EN 1990 Table A1.1.
SnowSite = Literal[
    # Not stated: the higher factors, as above 1000 m.
    "SNOW_SITE_UNSPECIFIED",
    # Up to 1000 m above sea level.
    "SNOW_SITE_LOW",
    # Above 1000 m.
    "SNOW_SITE_HIGH",
    # Finland, Iceland, Norway, Sweden.
    "SNOW_SITE_NORDIC",
]

# CombinationKind is what a combination is for.
CombinationKind = Literal[
    # Never sent; refused.
    "COMBINATION_KIND_UNSPECIFIED",
    # Strength: EN 1990 (6.10), set B of Table A1.2; ASCE 7-22 2.3.1 (LRFD), 2.4.1
    # (ASD).
    "COMBINATION_KIND_STRENGTH",
    # Strength by EN 1990 (6.10a) and (6.10b). Eurocode only.
    "COMBINATION_KIND_STRENGTH_AB",
    # Ground: EN 1990 (6.10), set C of Table A1.2. Eurocode only.
    "COMBINATION_KIND_GROUND",
    # Static equilibrium: EN 1990 (6.10), set A of Table A1.2. Eurocode only.
    "COMBINATION_KIND_EQUILIBRIUM",
    # Accidental: EN 1990 (6.11b). Eurocode only.
    "COMBINATION_KIND_ACCIDENTAL",
    # Characteristic: EN 1990 (6.14b). Eurocode; in load cases of US LRFD service values,
    # combined by ASCE 7-22 2.4.1.
    "COMBINATION_KIND_CHARACTERISTIC",
    # Frequent: EN 1990 (6.15b). Eurocode only.
    "COMBINATION_KIND_FREQUENT",
    # Quasi-permanent: EN 1990 (6.16b). Eurocode only.
    "COMBINATION_KIND_QUASI_PERMANENT",
    # Factored beside service values: ASCE 7-22 2.3.1, by which ACI 318 checks the concrete
    # of a pad. In load cases of US ASD only.
    "COMBINATION_KIND_FACTORED",
]

# ItemKind is what an item is, which its rate goes by.
ItemKind = Literal[
    # Never sent; refused.
    "ITEM_KIND_UNSPECIFIED",
    # Steel plate.
    "ITEM_KIND_STEEL_PLATE",
    # Steel rods.
    "ITEM_KIND_STEEL_ROD",
    # Weld metal.
    "ITEM_KIND_WELD_METAL",
    # Reinforcement.
    "ITEM_KIND_REINFORCEMENT",
    # Concrete.
    "ITEM_KIND_CONCRETE",
    # Blinding.
    "ITEM_KIND_BLINDING",
    # Granular fill, compacted.
    "ITEM_KIND_FILL",
    # Levelling layer.
    "ITEM_KIND_LEVELLING",
    # New rings.
    "ITEM_KIND_NEW_RING",
    # Reused rings.
    "ITEM_KIND_REUSED_RING",
    # Geotextile.
    "ITEM_KIND_GEOTEXTILE",
    # Formwork.
    "ITEM_KIND_FORMWORK",
    # Excavation.
    "ITEM_KIND_EXCAVATION",
    # Soil of the excavation, put back.
    "ITEM_KIND_BACKFILL",
    # Soil of the excavation that is left over.
    "ITEM_KIND_SURPLUS",
]

# RateMeasure is what a rate counts by.
RateMeasure = Literal[
    # Not stated: refused, but with transport, which counts by tonne and kilometre.
    "RATE_MEASURE_UNSPECIFIED",
    # kg.
    "RATE_MEASURE_KG",
    # m3 in place.
    "RATE_MEASURE_M3",
    # m3 loose, as delivered or dug.
    "RATE_MEASURE_LOOSE_M3",
    # m2.
    "RATE_MEASURE_M2",
    # Piece.
    "RATE_MEASURE_PIECE",
]

# TestMode is the way in which a loaded footing gives way.
TestMode = Literal[
    # None: the test was stopped without failure.
    "TEST_MODE_UNSPECIFIED",
    # A ring bursts.
    "TEST_MODE_RING_BURST",
    # The fill crushes or bulges.
    "TEST_MODE_FILL_CRUSHED",
    # A plate bends.
    "TEST_MODE_PLATE_BENT",
    # A clamping rod yields or breaks.
    "TEST_MODE_ROD_FAILED",
    # The ground gives way.
    "TEST_MODE_GROUND_FAILED",
    # Any other.
    "TEST_MODE_OTHER",
]

# TestPhase is what a stage of load belongs to.
TestPhase = Literal[
    # Never sent; refused.
    "TEST_PHASE_UNSPECIFIED",
    # First loading.
    "TEST_PHASE_FIRST_LOADING",
    # Seating, before the first loading: in no fit.
    "TEST_PHASE_SEATING",
    # Unloading. Its last stage is where the reload begins.
    "TEST_PHASE_UNLOADING",
    # Reloading.
    "TEST_PHASE_RELOADING",
]


class SteelFactors(TypedDict, total=False):
    """SteelFactors are parameters of EN 1993. Each is optional."""

    # gamma_M0, yielding of steel. Default 1.00 (EN 1993-1-1 6.1). 0.9 to 2.
    gamma_m0: float
    # gamma_M1, buckling of steel. Default 1.00 (EN 1993-1-1 6.1). 1 to 2.
    gamma_m1: float
    # gamma_M2, rupture of steel, bolts and welds. Default 1.25 (EN 1993-1-8
    # Table 2.1). 1 to 2.
    gamma_m2: float
    # beta_j, foundation joint material coefficient. Default 2/3, which is also
    # the most (EN 1993-1-8 6.2.5(7)). Over 0 to 2/3.
    beta_j: float
    # C_f,d, friction between plate and grout. Default 0.20 (EN 1993-1-8
    # 6.2.2(6)). 0 to 0.5.
    c_fd: float


class ConcreteFactors(TypedDict, total=False):
    """ConcreteFactors are parameters of EN 1992. Each is optional."""

    # gamma_C, concrete. Default 1.50 (EN 1992-1-1 2.4.2.4). 1 to 3.
    gamma_c: float
    # gamma_S, reinforcement. Default 1.15 (EN 1992-1-1 2.4.2.4). 1 to 2.
    gamma_s: float
    # alpha_cc, long-term effects on the strength of concrete. Default 1.0
    # (EN 1992-1-1 3.1.6). 0.7 to 1.
    alpha_cc: float
    # alpha_ct,pl, tensile strength of plain concrete. Default 0.8 (EN 1992-1-1
    # 12.3.1). 0.1 to 1.
    alpha_ct_pl: float


class TimberFactors(TypedDict, total=False):
    """TimberFactors are parameters of EN 1995. Each is optional."""

    # gamma_M of timber. Default by material: 1.30 solid, 1.25 glued laminated
    # (EN 1995-1-1 Table 2.3). 1 to 2.
    gamma_m: float
    # gamma_M of connections. Default 1.30 (EN 1995-1-1 Table 2.3). 1 to 2.
    gamma_m_connections: float


class GroundFactors(TypedDict, total=False):
    """GroundFactors are the partial factors of EN 1997-1 for the ground. Each is optional
    and defaults to the value of its Annex A.
    """

    # gamma_phi' of set M2, on tan phi'. Default 1.25 (Table A.4). 1 to 3.
    gamma_phi: float
    # gamma_c' of set M2, on effective cohesion. Default 1.25 (Table A.4). 1 to 3.
    gamma_c_eff: float
    # gamma_cu of set M2, on undrained strength. Default 1.4 (Table A.4). 1 to 3.
    gamma_cu: float
    # gamma_R,v of set R2, bearing. Default 1.4 (Table A.5). 1 to 3.
    gamma_r_v: float
    # gamma_R,h of set R2, sliding. Default 1.1 (Table A.5). 1 to 3.
    gamma_r_h: float
    # gamma_phi' on tan phi' and c' of the fill in rings. Default 1.25 (Table A.4). 1 to 3.
    gamma_phi_fill: float


class ActionFactors(TypedDict, total=False):
    """ActionFactors are the partial factors of EN 1990 Table A1.2. EN 1997-1 takes the same
    ones: sets B and C are its A1 and A2, set A is its EQU and, on the safe side, its UPL.
    Each is optional and defaults to the recommended value.
    """

    # gamma_G,sup of set B. Default 1.35. 1 to 2.
    gamma_g_sup: float
    # gamma_G,inf of sets B and C. Default 1.00. 0.5 to 1.
    gamma_g_inf: float
    # gamma_Q of sets A and B. Default 1.50. 1 to 2.
    gamma_q: float
    # xi of (6.10b). Default 0.85. 0.5 to 1.
    xi: float
    # gamma_G,sup of set A (equilibrium). Default 1.10. 1 to 2.
    gamma_g_sup_equilibrium: float
    # gamma_G,inf of set A (equilibrium). Default 0.90. 0.5 to 1.
    gamma_g_inf_equilibrium: float
    # gamma_Q of set C (ground). Default 1.30. 1 to 2.
    gamma_q_ground: float
    # Whether the leading variable action of an accidental combination has its
    # frequent value psi_1. Default false: psi_2.
    accidental_frequent: bool


class Eurocode(TypedDict, total=False):
    """Eurocode are EN 1990 to EN 1997 with their nationally determined parameters. What is
    left out takes the value of the national annex, without one the recommended value;
    the answer states every value used and where it comes from.
    """

    # Edition of the standards. Default "first generation", EN 1990:2002 to EN
    # 1997-1:2004, which CatalogService lists; no other is known yet.
    edition: str
    # National annex whose values count where none is given below, by the name that
    # CatalogService lists. Default: none, the recommended values.
    annex: str
    # Steel, bolts, welds and column bases.
    steel: SteelFactors
    # Concrete and its reinforcement.
    concrete: ConcreteFactors
    # Timber and its connections.
    timber: TimberFactors
    # The ground and the fill of rings.
    ground: GroundFactors
    # Actions, those on the ground and weights included.
    actions: ActionFactors


class UsLrfd(TypedDict, total=False):
    """UsLrfd are AISC 360, ACI 318, NDS and ASCE 7 by load and resistance factors."""

    # Edition of the standards. Default "2022", AISC 360-22, ACI 318-19, NDS 2018 and
    # ASCE 7-22, which CatalogService lists; no other is known yet.
    edition: str
    # mu, friction of steel on grout or concrete. Default 0.4 (AISC Design Guide 1, 3rd
    # ed., Example 4.7-8). 0 to 0.7.
    friction_coefficient: float
    # Resistance factor of bearing on the ground. Required where the ground is checked by
    # its strength. 0.1 to 1.
    bearing_resistance_factor: float
    # Resistance factor of sliding, on the ground and in a stack of rings. Default: on the
    # ground one over the factor of safety of stability; sliding in a stack is then out of
    # scope. 0.1 to 1.
    sliding_resistance_factor: float
    # Factor of safety of sliding, overturning and uplift on the ground. Default 1.5
    # (common practice, no source). 1 to 10.
    stability_safety_factor: float
    # Resistance factor of the fill in rings. Default none: what rests on its strength is
    # then out of scope. 0.1 to 1.
    fill_resistance_factor: float


class UsAsd(TypedDict, total=False):
    """UsAsd are AISC 360, ACI 318, NDS and ASCE 7 by allowable strength."""

    # Edition of the standards. Default "2022", AISC 360-22, ACI 318-19, NDS 2018 and
    # ASCE 7-22, which CatalogService lists; no other is known yet.
    edition: str
    # mu, friction of steel on grout or concrete. Default 0.4 (AISC Design Guide 1, 3rd
    # ed., Example 4.7-8). 0 to 0.7.
    friction_coefficient: float
    # Factor of safety of bearing on the ground. Default 3 (common practice, no source).
    # 1 to 10.
    bearing_safety_factor: float
    # Factor of safety of sliding, overturning and uplift, on the ground and of a stack of
    # rings. Default 1.5 (common practice, no source). 1 to 10.
    stability_safety_factor: float
    # Factor of safety of the fill in rings. Default 3 (common practice, no source). 1 to
    # 20.
    fill_safety_factor: float


class DesignBasis(TypedDict, total=False):
    """DesignBasis chooses the standards and is the one home of the factors that they leave
    to a nation or to the caller. A field that belongs to another family is refused
    wherever it stands in a request.
    """

    # EN 1990 to EN 1997. Actions are design values (already multiplied by their
    # partial factors) unless a field says otherwise.
    eurocode: Eurocode
    # United States practice by load and resistance factors. Actions are factored
    # (required strengths by ASCE 7-22 2.3).
    us_lrfd: UsLrfd
    # United States practice by allowable strength. Actions are not factored (required
    # strengths by ASCE 7-22 2.4).
    us_asd: UsAsd


class SolidRectangle(TypedDict, total=False):
    """SolidRectangle is a full rectangle."""

    # Size along x [mm]. Required. Over 0 to 5000.
    size_x_mm: float
    # Size along y [mm]. Required. Over 0 to 5000.
    size_y_mm: float


class ForcesAtFoot(TypedDict, total=False):
    """ForcesAtFoot are the actions of the column on its base at the plate's upper
    face, on the plate's centre. Signs: see the drawing at the top of this file.
    Design values for Eurocode and LRFD, unfactored combinations for ASD.
    """

    # Axial force [kN]: positive pulls up (tension), negative presses down
    # (compression). Default 0. -100 000 to 100 000.
    n_kn: float
    # Shear along x [kN], positive towards +x. Default 0. -100 000 to 100 000.
    v_x_kn: float
    # Shear along y [kN], positive towards +y. Default 0. -100 000 to 100 000.
    v_y_kn: float
    # Moment about x [kNm]: positive presses the -y side. Default 0.
    # -100 000 to 100 000.
    m_x_knm: float
    # Moment about y [kNm]: positive presses the +x side. Default 0.
    # -100 000 to 100 000.
    m_y_knm: float
    # Torsion about z [kNm]: positive counter-clockwise from above. Default 0.
    # -100 000 to 100 000.
    t_knm: float


class ConcreteProperties(TypedDict, total=False):
    """ConcreteProperties give the strength of a concrete."""

    # Cylinder strength [MPa]: characteristic f_ck (Eurocode), specified f'c
    # (US). Required. 8 to 100.
    strength_mpa: float


class Concrete(TypedDict, total=False):
    """Concrete of a pedestal: a grade or its strength."""

    # Catalogue designation, such as "C25/30" or "f'c 4000 psi". At most 60
    # characters.
    grade: str
    # Strength.
    properties: ConcreteProperties


class Grout(TypedDict, total=False):
    """Grout is the levelling layer under a plate."""

    # Thickness [mm]. Required. Over 0 to 300.
    thickness_mm: float
    # Characteristic compressive strength [MPa]. Required. 1 to 150.
    strength_mpa: float


class ConcreteBlock(TypedDict, total=False):
    """ConcreteBlock is a rectangular block of concrete with level top."""

    # Concrete. Required.
    concrete: Concrete
    # Size along x [mm]. Required. Over 0 to 50 000.
    size_x_mm: float
    # Size along y [mm]. Required. Over 0 to 50 000.
    size_y_mm: float
    # Height over which the load can spread [mm]. Required. Over 0 to 20 000.
    height_mm: float
    # Centre of the plate from the centre of the block along x [mm]. Default 0.
    # -25 000 to 25 000; the plate must stay on the block.
    offset_x_mm: float
    # Centre of the plate from the centre of the block along y [mm]. Default 0.
    # -25 000 to 25 000; the plate must stay on the block.
    offset_y_mm: float
    # Grout between plate and concrete. Absent: the plate is bedded without.
    grout: Grout


class TimberProperties(TypedDict, total=False):
    """TimberProperties are the compressive strengths of a timber."""

    # Along the grain [MPa]: characteristic f_c,0,k (Eurocode); reference design
    # value F_c (NDS). Required. 1 to 100.
    compression_along_mpa: float
    # Across the grain [MPa]: characteristic f_c,90,k (Eurocode); reference
    # design value F_c-perp (NDS). Required. 0.5 to 50.
    compression_across_mpa: float
    # What it is made of. Required.
    kind: TimberKind


class Timber(TypedDict, total=False):
    """Timber bearing on or under a plate: a grade or its properties."""

    # Catalogue designation, such as "EN 338 C24" or "NDS Douglas Fir-Larch
    # No. 2". At most 60 characters.
    grade: str
    # Strengths.
    properties: TimberProperties


class TimberBearing(TypedDict, total=False):
    """TimberBearing is timber under pressure from a plate."""

    # Timber. Required.
    timber: Timber
    # Direction of the pressure. Required.
    direction: GrainDirection
    # Moisture class. Required with the Eurocode.
    service_class: ServiceClass
    # Duration of the load; the Eurocode's k_mod. Beside actions to be combined, and load
    # cases with a duration of their own, it is an upper bound: the longer counts.
    load_duration: LoadDuration
    # C_D, load duration factor of NDS Table 2.3.2; ASD, along the grain.
    # Default 0.9 (permanent). 0.9 to 2. Beside actions to be combined, and load cases
    # with a duration, the lesser counts; default that of the combination.
    load_duration_factor: float
    # lambda, time effect factor of NDS Table N3; LRFD. Default 0.6 (permanent).
    # 0.6 to 1.25. Beside actions to be combined, and load cases with a duration, the
    # lesser counts; default that of the combination.
    time_effect_factor: float
    # Across the grain: how the member is held below.
    across_support: AcrossGrainSupport
    # Across the grain: axis of the plate that lies along the grain. False: the
    # grain runs along x; true: along y. Default false.
    grain_along_y: bool
    # Across the grain: from the edge of the contact to the end of the member,
    # along the grain, the nearer end [mm]. Default 0 (at the end). 0 to 50 000.
    end_distance_mm: float
    # Across the grain: clear distance to the next contact along the grain [mm].
    # Default: no other contact. 0 to 50 000.
    clear_spacing_mm: float
    # Across the grain: depth h of the member in the direction of the pressure
    # [mm]. Needed for k_c,90 above 1. Default 0 (not known). 0 to 5000.
    depth_mm: float


class GivenPressure(TypedDict, total=False):
    """GivenPressure is a bearing pressure that the designer answers for."""

    # Design (Eurocode, LRFD) or allowable (ASD) bearing pressure [kPa].
    # Required. Over 0 to 100 000.
    pressure_kpa: float
    # Where the pressure comes from: report, test or table. Required, 3 to 300
    # characters; it is printed with the answer.
    source: str
    # The medium. Required.
    medium: GivenMedium


class Support(TypedDict, total=False):
    """Support is what the plate stands on."""

    # A concrete block, pedestal or pad.
    concrete: ConcreteBlock
    # Timber, along or across its grain.
    timber: TimberBearing
    # Any other medium, by a pressure that the designer answers for.
    given: GivenPressure


class CheckBearingRequest(TypedDict, total=False):
    """CheckBearingRequest describes a plate or column end on its support."""

    # The caller's own name for this check, echoed in the answer. At most 200
    # characters.
    label: str
    # Standards and factors. Required.
    basis: DesignBasis
    # How much of the answer is sent. Default: limit states.
    detail: Detail
    # Contact area: the plate's plan, or the end of a column. Required.
    contact: SolidRectangle
    # Actions; N, M_x and M_y are used. N < 0 is compression; without it the
    # check is not applicable. Required.
    forces: ForcesAtFoot
    # What the contact area stands on. Required.
    support: Support


class Exposure(TypedDict, total=False):
    """Exposure is what corrodes the steel, and for how long. It counts for every plate, rod,
    weld and ring that states no allowance of its own.
    """

    # Design life [years]. Required. Over 0 to 100.
    design_life_years: float
    # The ground that the steel lies in (EN 1993-5 Table 4-1).
    ground: CorrosiveGround
    # A steady loss of each face that the caller answers for [mm/year]. 0 to 10.
    rate_mm_per_year: float


class SteelProperties(TypedDict, total=False):
    """SteelProperties are the strengths of a steel at the thickness of the part."""

    # Yield strength f_y [MPa]. Required. 100 to 1500.
    fy_mpa: float
    # Tensile strength f_u [MPa], not below f_y. Required. 100 to 2000.
    fu_mpa: float
    # beta_w, correlation factor of EN 1993-1-8 Table 4.1. Default 1.0, the
    # most cautious. Only welds by Eurocode use it. 0.8 to 1.
    beta_w: float


class Steel(TypedDict, total=False):
    """Steel of a plate or a joined part: a grade or its properties."""

    # Catalogue designation, such as "EN 10025-2 S355" or "ASTM A36". Strength
    # then follows the thickness of the part. At most 60 characters.
    grade: str
    # Strengths for the thickness used.
    properties: SteelProperties


class Plate(TypedDict, total=False):
    """Plate is a flat rectangular steel plate, centred on the column axis."""

    # Size along x [mm]. Required. Over 0 to 5000.
    size_x_mm: float
    # Size along y [mm]. Required. Over 0 to 5000.
    size_y_mm: float
    # Thickness as built [mm]. Required. Over 0 to 300.
    thickness_mm: float
    # Steel. Required.
    steel: Steel
    # Thickness lost to corrosion over the design life, all faces together [mm].
    # Taken off the thickness in every resistance. Default: what exposure
    # takes, else 0; a stated 0 is none. 0 to 50.
    corrosion_allowance_mm: float


class ISection(TypedDict, total=False):
    """ISection has its web along y and its flanges along x."""

    # Depth over the flanges, along y [mm]. Required. Over 0 to 2000.
    depth_mm: float
    # Width of the flanges, along x [mm]. Required. Over 0 to 2000.
    width_mm: float
    # Thickness of the flanges [mm]. Required. Over 0 to 200.
    flange_mm: float
    # Thickness of the web [mm]. Required. Over 0 to 200.
    web_mm: float


class Tube(TypedDict, total=False):
    """Tube is a rectangular hollow section or a welded box."""

    # Outside size along x [mm]. Required. Over 0 to 2000.
    size_x_mm: float
    # Outside size along y [mm]. Required. Over 0 to 2000.
    size_y_mm: float
    # Thickness of the wall [mm]. Required. Over 0 to 200.
    wall_mm: float


class Pipe(TypedDict, total=False):
    """Pipe is a round hollow section."""

    # Outside diameter [mm]. Required. Over 0 to 2000.
    diameter_mm: float
    # Thickness of the wall [mm]. Required. Over 0 to 200.
    wall_mm: float


class TwoPlates(TypedDict, total=False):
    """TwoPlates are two upright parallel plates of the same size, both lying along
    y, mirror-wise about x = 0.
    """

    # Length of each along y [mm]. Required. Over 0 to 2000.
    length_mm: float
    # Thickness of each, along x [mm]. Required. Over 0 to 200.
    thickness_mm: float
    # Clear gap between them, along x [mm]. Required. Over 0 to 2000.
    gap_mm: float


class Footprint(TypedDict, total=False):
    """Footprint is the outline by which a column or shoe stands on the plate,
    centred on it.
    """

    # An I or H section.
    i_section: ISection
    # A rectangular hollow section or welded box.
    tube: Tube
    # A round pipe.
    pipe: Pipe
    # A solid rectangle, such as a block or the end of a timber column.
    rectangle: SolidRectangle
    # Two parallel plates, such as the brackets of a shoe.
    two_plates: TwoPlates
    # Whether the footprint is stiff enough to keep the plate flat under it.
    stiffness: FootprintStiffness
    # Steel of the section: flange and web of an I-section, or the walls of a tube,
    # are then checked where they bring a moment or an uplift into the plate
    # (EN 1993-1-8 6.2.6.7, 6.2.6.8). Used with the Eurocode. Default: they are not
    # checked, and a notice says so.
    steel: Steel


class ThreadProperties(TypedDict, total=False):
    """ThreadProperties are the sizes of a thread."""

    # Nominal diameter [mm]. Required. 3 to 200.
    diameter_mm: float
    # Tensile stress area [mm2], less than that of the nominal diameter.
    # Required. 1 to 30 000.
    stress_area_mm2: float


class Thread(TypedDict, total=False):
    """Thread of a rod: a designation or its sizes."""

    # Catalogue designation, such as "M20" or "3/4-10 UNC". At most 60
    # characters.
    designation: str
    # Sizes.
    properties: ThreadProperties


class RodSteelProperties(TypedDict, total=False):
    """RodSteelProperties are the strengths of a rod."""

    # Yield strength f_yb [MPa]. Required. 100 to 1500.
    fy_mpa: float
    # Tensile strength f_ub [MPa], not below f_yb. Required. 100 to 2000; above
    # 1000 the Eurocode answers out of scope.
    fu_mpa: float


class RodSteel(TypedDict, total=False):
    """RodSteel is the material of a rod: a class or its properties."""

    # Catalogue designation, such as "ISO 898-1 8.8" or "ASTM F1554 Gr 36". At
    # most 60 characters.
    grade: str
    # Strengths.
    properties: RodSteelProperties


class Rod(TypedDict, total=False):
    """Rod is a threaded rod, anchor bolt or bolt."""

    # Thread. Required.
    thread: Thread
    # Material. Required.
    steel: RodSteel
    # How the threads were made.
    thread_making: ThreadMaking
    # Whether the plain shank, not the thread, stands in the shear plane. Default
    # false: thread in the shear plane.
    shank_in_shear_plane: bool
    # Whether the head is countersunk. Default false.
    countersunk: bool
    # Mean of the widths of nut or head across flats and across corners, d_m
    # [mm], for punching. Default 0: 1.5 d, less than any standard nut. 0 to 400.
    nut_mean_width_mm: float
    # Diameter lost to corrosion over the design life [mm]. Default: what
    # exposure takes, else 0; a stated 0 is none. 0 to 20.
    corrosion_allowance_mm: float
    # Length that stretches, from nut to nut, or to the point where the rod is
    # held, L_b [mm]. Default 0: by EN 1993-1-8 Table 6.2 as an anchor bolt cast
    # in concrete, 8 d + grout + plate + washer + half a nut. 0 to 20 000.
    stretch_length_mm: float


class RodPosition(TypedDict, total=False):
    """RodPosition is the place of a rod from the plate's centre."""

    # Along x [mm]. Default 0. -2500 to 2500.
    x_mm: float
    # Along y [mm]. Default 0. -2500 to 2500.
    y_mm: float


class Holes(TypedDict, total=False):
    """Holes are the holes of a plate for its rods."""

    # Diameter d_0 [mm]. Required. Over 0 to 300.
    diameter_mm: float
    # How far a rod may stand from its drawn place, in any direction [mm].
    # Default 0. 0 to 200.
    position_tolerance_mm: float
    # Whether plate washers with holes of normal clearance are welded to the
    # plate, so that rods in oversized holes carry shear. Default false.
    welded_washers: bool
    # Thickness of washers or washer plates under the nuts [mm]. Default 0: none,
    # or, where washers are welded over wide holes, as the plate. 0 to 100.
    washer_thickness_mm: float
    # Side of a square washer plate [mm]. Default 0: no washer plate to be
    # checked in bending; needed where the nut is not wider than the hole. 0 to 500.
    washer_side_mm: float
    # Yield strength of the washer plate [MPa]. Absent: as the plate, with a
    # notice. 100 to 1500.
    washer_fy_mpa: float
    # Whether the plate keeps the rods' upper ends from turning where they bend:
    # below washers welded over wide holes, and in grout by EN 1992-4
    # (alpha_M 2 instead of 1). Default false. For US washers both ends are held as
    # in AISC Design Guide 1, 3rd ed., Example 4.7-6; across a gap stand_off says it.
    plate_holds_rotation: bool


class RodGroup(TypedDict, total=False):
    """RodGroup is a number of equal rods through one plate."""

    # The rod. Required.
    rod: Rod
    # Where the rods stand. Required, 1 to 64, no two in one place.
    positions: list[RodPosition]
    # The holes. Required.
    holes: Holes


class CheckPlateBendingRequest(TypedDict, total=False):
    """CheckPlateBendingRequest describes a base plate between footprint and
    support.
    """

    # The caller's own name for this check, echoed in the answer. At most 200
    # characters.
    label: str
    # Standards and factors. Required.
    basis: DesignBasis
    # How much of the answer is sent. Default: limit states.
    detail: Detail
    # What corrodes the steel. Absent: nothing, and parts lose what they state alone.
    exposure: Exposure
    # The plate. Required.
    plate: Plate
    # What stands on it. Required.
    footprint: Footprint
    # Actions; N and one of M_x and M_y are used. Required.
    forces: ForcesAtFoot
    # What the plate stands on: gives the bearing pressure. Required.
    support: Support
    # Rods that hold the plate down. Required where the actions lift a side of
    # the plate; otherwise not used.
    rods: RodGroup
    # Throat of the fillet weld round the footprint [mm], for the lever arm m of
    # the tension side, as made; what exposure takes of it is left out.
    # Default 0: measured to the face. 0 to 100.
    footprint_weld_throat_mm: float


class JoinedPart(TypedDict, total=False):
    """JoinedPart is a part that a weld joins."""

    # Thickness at the weld [mm]. Required. Over 0 to 300.
    thickness_mm: float
    # Steel. Required.
    steel: Steel
    # Whether the fillet runs along an edge of this part, which limits its size
    # (AISC 360 J2.2b); its legs cannot be more than the edge. Default false.
    weld_along_edge: bool
    # Thickness of the part lost to corrosion over the design life [mm], where the
    # part itself resists; a complete-penetration weld states its own. Default: what
    # exposure takes, else 0; a stated 0 is none. 0 to 100, less than the
    # thickness.
    corrosion_allowance_mm: float


class WeldMetalProperties(TypedDict, total=False):
    """WeldMetalProperties give the strength of a filler."""

    # Tensile strength of the deposited metal [MPa]: F_EXX (US), R_m (EN).
    # Required. 300 to 1000.
    strength_mpa: float


class WeldMetal(TypedDict, total=False):
    """WeldMetal is the filler of a weld: a classification or its strength."""

    # Catalogue designation, such as "AWS E70" or "EN ISO 2560 E 42". At most 60
    # characters.
    grade: str
    # Strength.
    properties: WeldMetalProperties


class WeldSpec(TypedDict, total=False):
    """WeldSpec is what a weld is, apart from where it lies."""

    # Kind. Required.
    kind: WeldKind
    # Leg of a fillet weld [mm]. 0 to 100.
    leg_mm: float
    # Effective throat [mm] of a fillet or partial-penetration weld. A complete-
    # penetration weld takes the thinner part. 0 to 100.
    throat_mm: float
    # The two parts joined. Required, two.
    parts: list[JoinedPart]
    # Filler. Required with the US bases; with the Eurocode optional, and then
    # taken to match the base metal, which EN 1993-1-8 4.2 demands.
    filler: WeldMetal
    # Throat lost to corrosion over the design life [mm]. Default: what
    # exposure takes, else 0; a stated 0 is none. 0 to 20.
    corrosion_allowance_mm: float
    # Whether the weld has its full size up to both ends (returns or run-off
    # tabs); otherwise each end loses one throat (EN 1993-1-8 4.5.1). Default
    # false.
    full_size_to_ends: bool
    # Whether each run or segment has the full thickness of the parts to itself,
    # as the weld round a hollow section or on the two edges of a lap plate.
    # Default false: two runs or segments share one thickness, as fillets on both
    # faces of an upright plate. Only the base metal uses it. With the Eurocode
    # segments of a group share only where two lie on both faces of the second
    # part, and fillets along an edge do not share.
    own_section: bool


class WeldRun(TypedDict, total=False):
    """WeldRun is one straight run of weld, or several equal ones. The force is
    split along the axis of the weld and two directions across it; signs do not
    matter.
    """

    # Length of one run, end to end [mm]. Required. Over 0 to 50 000.
    length_mm: float
    # Number of equal runs that share the force equally. Default 0 counts as 1.
    # 0 to 100.
    count: int
    # Force along the weld's axis, all runs together [kN]. Default 0. -100 000 to
    # 100 000.
    along_kn: float
    # Force across the axis, parallel to the face of the first part (the plate),
    # all runs together [kN]. Default 0. -100 000 to 100 000.
    across_kn: float
    # Force square to the face of the first part (the plate), all runs together
    # [kN]. Default 0. -100 000 to 100 000.
    normal_kn: float
    # Whether the weld is loaded from its end, as in a lap joint, so that long
    # runs are less effective (EN 1993-1-8 4.11, AISC 360 J2.2b). Default false.
    end_loaded: bool


class WeldSegment(TypedDict, total=False):
    """WeldSegment is a straight piece of weld in the plane of the plate."""

    # Start along x [mm]. Default 0. -5000 to 5000.
    x1_mm: float
    # Start along y [mm]. Default 0. -5000 to 5000.
    y1_mm: float
    # End along x [mm]. Default 0. -5000 to 5000.
    x2_mm: float
    # End along y [mm]. Default 0. -5000 to 5000.
    y2_mm: float


class WeldGroup(TypedDict, total=False):
    """WeldGroup is a group of straight segments of one weld in the x-y plane."""

    # The segments. Required, 1 to 200, none of zero length.
    segments: list[WeldSegment]
    # Actions on the group. Required.
    forces: ForcesAtFoot
    # Where the actions are applied: x in the coordinates of the segments [mm].
    # Default 0. -50 000 to 50 000.
    at_x_mm: float
    # Where the actions are applied: y [mm]. Default 0. -50 000 to 50 000.
    at_y_mm: float
    # Where the actions are applied: height above the weld's plane [mm]. Default
    # 0. -50 000 to 50 000.
    at_z_mm: float
    # How the group shares the actions. Default elastic.
    method: WeldGroupMethod
    # Whether the welds are loaded from their ends, as in a lap joint, so that long
    # lines are less effective (EN 1993-1-8 4.11, AISC 360 J2.2b). The whole group
    # is reduced as its longest line, from end to end of all segments along it.
    # Elastic method only. Default false.
    end_loaded: bool
    # Whether the segments are one closed line of weld without ends, as chords of
    # the round weld of a pipe: each starts where the one before ends, the first
    # where the last ends, within 0.5 mm. The least length, and the leg that a
    # length allows, then go by the whole line, and no ends are deducted. Default
    # false: each segment is a weld by itself.
    continuous: bool


class CheckWeldRequest(TypedDict, total=False):
    """CheckWeldRequest describes a weld and its actions."""

    # The caller's own name for this check, echoed in the answer. At most 200
    # characters.
    label: str
    # Standards and factors. Required.
    basis: DesignBasis
    # How much of the answer is sent. Default: limit states.
    detail: Detail
    # What corrodes the steel. Absent: nothing, and parts lose what they state alone.
    exposure: Exposure
    # What the weld is. Required.
    weld: WeldSpec
    # One straight run, or several equal ones that share the force equally.
    run: WeldRun
    # A group of straight segments under forces and moments.
    group: WeldGroup


class RodForce(TypedDict, total=False):
    """RodForce is the action on one rod."""

    # Tension [kN]; a rod in compression is out of scope. Default 0. 0 to
    # 100 000.
    tension_kn: float
    # Shear along x [kN]. Default 0. -100 000 to 100 000.
    shear_x_kn: float
    # Shear along y [kN]. Default 0. -100 000 to 100 000.
    shear_y_kn: float


class StandOff(TypedDict, total=False):
    """StandOff describes rods that carry shear across a gap under the plate."""

    # Clear gap from the surface in which the rod is held to the underside of
    # the plate [mm]. Required. Over 0 to 1000.
    gap_mm: float
    # Whether a nut and washer clamp the rod at that surface, so that it is held
    # there and not half a diameter further in. Default false.
    clamped_at_surface: bool
    # Whether the plate keeps the rod's upper end from turning. Default false.
    plate_holds_rotation: bool


class BaseFriction(TypedDict, total=False):
    """BaseFriction counts friction between plate and support towards the shear of
    the base. It counts only under compression and without a stand-off.
    """

    # Compression under the plate that is certain to act together with the shear
    # [kN], as a magnitude. Beside forces no more of it counts than they press with.
    # Required. Over 0 to 100 000.
    compression_kn: float
    # Compressive strength f'c of the concrete or grout under the plate, US bases
    # [MPa]: friction takes at most 0.2 f'c and 0.8 ksi of the contact (Eq. 4-30).
    # Absent: 4000 psi or more is taken, with a notice. 5 to 150.
    concrete_strength_mpa: float


class CheckAnchorRodsRequest(TypedDict, total=False):
    """CheckAnchorRodsRequest describes rods through a plate and their actions."""

    # The caller's own name for this check, echoed in the answer. At most 200
    # characters.
    label: str
    # Standards and factors. Required.
    basis: DesignBasis
    # How much of the answer is sent. Default: limit states.
    detail: Detail
    # What corrodes the steel. Absent: nothing, and parts lose what they state alone.
    exposure: Exposure
    # The plate through which the rods pass. Required.
    plate: Plate
    # The rods. Required.
    rods: RodGroup
    # Actions shared among the rods by the elastic method of bolt groups: V_x,
    # V_y and T by the polar inertia; N, M_x and M_y only where every rod stays
    # in tension (a plate in contact with its support is out of scope here). Give
    # forces or rod_forces, not both; one is required.
    forces: ForcesAtFoot
    # Actions rod by rod, in the order of rods.positions. As many as positions.
    rod_forces: list[RodForce]
    # Gap under the plate that the rods bridge. Absent: the plate lies on grout
    # or on a bed.
    stand_off: StandOff
    # Shear taken by friction under compression. Absent: none.
    friction: BaseFriction


class RodHead(TypedDict, total=False):
    """RodHead is what bears on the concrete at the lower end of a rod: give diameter
    and thickness, or the bearing area.
    """

    # Diameter of a round head, or of the largest circle inside a nut or plate
    # [mm]. It counts up to 6 times the thickness and the rod. Default 0: not
    # given. 0 to 1000.
    diameter_mm: float
    # Thickness [mm]. Required with the diameter. 0 to 300.
    thickness_mm: float
    # Bearing area without that of the rod, A_h, A_brg [mm2]. Default 0: not
    # given. 0 to 1 000 000.
    bearing_area_mm2: float


class HeadedAnchorage(TypedDict, total=False):
    """HeadedAnchorage is rods with heads in a block of concrete."""

    # Effective embedment h_ef: from the surface of the concrete to the bearing
    # face of the head [mm]. Required. Over 0 to 5000.
    embedment_mm: float
    # The head. Required.
    head: RodHead
    # The block in which the rods stand; its edges are those of the concrete, and
    # its offset places the plate's centre. Absent: the concrete support of the
    # column base. Required in CheckAnchorage.
    block: ConcreteBlock
    # Whether it is shown that the concrete stays uncracked under all loads,
    # shrinkage and temperature. Default false: cracked.
    uncracked: bool
    # k_8 of the Eurocode for pry-out, from the assessment of the product.
    # Default 1, the least. 1 to 2. ACI 318 has its own factor.
    pry_out_factor: float
    # lambda_a of light-weight concrete, US bases. Default 1: normal-weight. 0.75
    # to 1. With the Eurocode anything below 1 is out of scope.
    lightweight_factor: float
    # Whether the rod's steel is not ductile: 8 % strain at rupture or less by EN
    # 1992-4, under 14 % by ACI 318. Default false: by the catalogue where it knows
    # the class (ISO 898-1 4.8 to 10.9 is not shown to be ductile by ACI 318, 6.8
    # not by EN 1992-4).
    brittle_steel: bool


class UpliftGround(TypedDict, total=False):
    """UpliftGround is the ground outside the prism above a bottom plate, up to a
    surface that rises from the plate's edges: planes, and cones at the corners.
    Where it is needed, it counts up to 30 degrees and a depth of 2.5 times the lesser
    side of the plate; beyond, the uplift is out of scope.
    """

    # Depth of the bottom plate below the surface [mm]. Required. Over 0 to
    # 20 000.
    depth_mm: float
    # Unit weight, buoyant below the water [kN/m3]. Required. Over 0 to 30.
    unit_weight_kn_m3: float
    # Angle of that surface from the vertical [deg]. Required. Over 0 to 45.
    angle_deg: float
    # Where the angle comes from, such as a pull test on that backfill. Required,
    # 1 to 300 characters.
    source: str


class ThroughAnchorage(TypedDict, total=False):
    """ThroughAnchorage is rods through a stack of fill to a bottom plate, which they
    clamp. The rods' length rods.rod.stretch_length_mm is required, and the bottom
    plate has the rods' holes and nuts. No code covers it: see the notices.
    """

    # The bottom plate, centred under the column. Required.
    bottom_plate: Plate
    # Plan of the fill that presses on the bottom plate along x, centred [mm].
    # Default 0: with pressed_y_mm the whole plate; without it the worse of the whole plate
    # and of the circle in it. At most the plate. 0 to 5000.
    pressed_x_mm: float
    # Plan of the fill that presses on the bottom plate along y, centred [mm].
    # Default 0: as of pressed_x_mm. At most the plate. 0 to 5000.
    pressed_y_mm: float
    # From the foot of the column, where the actions act, to the underside of the
    # bottom plate [mm]. Required, but of a column base on a stack, where 0 is the
    # height of plate, stack and bottom plate. 0 to 20 000.
    height_mm: float
    # Weight of all that the rods clamp: plates, rings and fill straight above the
    # bottom plate, characteristic, and not part of the actions [kN]. Default 0; of a
    # column base on a stack, fill and bottom plate. 0 to 100 000.
    clamped_weight_kn: float
    # Ground beside the stack that counts against uplift. Absent: none.
    ground: UpliftGround
    # Preload of each rod when tightened [kN]; rods, nuts and both plates must bear it.
    # Default 0. 0 to 10 000.
    initial_preload_kn: float
    # Share of it that relaxation takes. Default 0. 0 to 1.
    relaxation: float
    # Settlement of the clamped fill after tightening [mm]; what it settles before and by
    # the tightening is levelled out. Default 0; of a column base on a stack, that by the
    # service load. 0 to 1000.
    fill_settlement_mm: float
    # Stiffness of the clamped stack, its force over its shortening [kN/mm].
    # Default 0: not known; then every loss counts as if it were the worst for it. 0 to
    # 1 000 000.
    stack_stiffness_kn_mm: float
    # Preload that must be left in each rod [kN]; in a column base at least its
    # sharing.preload_kn. Preload through fill is never counted on: the check fails or
    # is out of scope. Default 0: none. 0 to 10 000.
    needed_preload_kn: float
    # Greatest stretch of a rod by the actions [mm]. Default 0: no limit. 0 to 1000.
    max_stretch_mm: float
    # Diameter of a round fill that presses on the bottom plate, centred [mm], such as the
    # lowest ring's; instead of pressed_x_mm and pressed_y_mm. Of a circle wider than the
    # plate the worse of the circle in it and of the whole plate counts. Default 0: not
    # round; of a column base on a stack, its lowest ring. 0 to 5000.
    pressed_diameter_mm: float


class Anchorage(TypedDict, total=False):
    """Anchorage is what holds rods at their lower end."""

    # Rods with heads, cast in concrete.
    headed: HeadedAnchorage
    # Rods right through a stack of fill to a bottom plate.
    through: ThroughAnchorage


class CheckAnchorageRequest(TypedDict, total=False):
    """CheckAnchorageRequest describes rods, their actions and what holds them below.
    All but the anchorage is as in CheckAnchorRodsRequest.
    """

    # The caller's own name for this check, echoed in the answer. At most 200
    # characters.
    label: str
    # Standards and factors. With US ASD, heads in concrete are out of scope.
    # Required.
    basis: DesignBasis
    # How much of the answer is sent. Default: limit states.
    detail: Detail
    # What corrodes the steel. Absent: nothing, and parts lose what they state alone.
    exposure: Exposure
    # The plate through which the rods pass above. Required.
    plate: Plate
    # The rods. Required.
    rods: RodGroup
    # Actions shared among the rods by the elastic method of bolt groups. Give
    # forces or rod_forces, not both; one is required.
    forces: ForcesAtFoot
    # Actions rod by rod, in the order of rods.positions. Their tensions together
    # count as the uplift of the foot.
    rod_forces: list[RodForce]
    # Gap under the plate that the rods bridge. Absent: none.
    stand_off: StandOff
    # Shear taken by friction under compression. Absent: none.
    friction: BaseFriction
    # What holds the rods. Required.
    anchorage: Anchorage


class PinnedTimber(TypedDict, total=False):
    """PinnedTimber is the end of a column at its pins. Strengths are characteristic
    values with the Eurocode, and reference design values with the size factor in
    them with the US bases.
    """

    # Kind of timber. Required.
    kind: TimberKind
    # Characteristic density rho_k [kg/m3]. Required with the Eurocode. Default 0:
    # not given. 0 or 100 to 1500.
    density_kg_m3: float
    # Specific gravity G. Required with the US bases. Default 0: not given. 0 or
    # 0.1 to 1.5.
    specific_gravity: float
    # Size of the column along the pins [mm]. Required. Over 0 to 10 000.
    size_along_pin_mm: float
    # Size of the column across the pins, h [mm]. Required. Over 0 to 10 000.
    size_across_pin_mm: float
    # Shear strength f_v,k, or F_v [MPa]. Required. Over 0 to 1000.
    shear_strength_mpa: float
    # Tension along the grain f_t,0,k, or F_t [MPa]. Required. Over 0 to 1000.
    tension_along_mpa: float
    # Compression along the grain f_c,0,k, or F_c [MPa]. Required. Over 0 to 1000.
    compression_along_mpa: float
    # Compression across the grain f_c,90,k [MPa], for the rope effect of bolts,
    # Eurocode. Default 0: no rope effect. 0 to 1000.
    compression_across_mpa: float
    # Mean modulus along the grain [MPa], US bases, for the group action factor of
    # several pins in line. Default 0: not given. 0 to 100 000.
    modulus_mpa: float
    # Service class. Required with the Eurocode; with the US bases not stated
    # counts as wet.
    service_class: ServiceClass
    # Load duration class of the Eurocode. Default: permanent, the most cautious.
    load_duration: LoadDuration
    # k_mod of the Eurocode, where it is not that of class and duration. Default:
    # by both. 0.1 to 1.1.
    k_mod: float
    # C_D of US ASD, NDS Table 2.3.2; of connections at most 1.6 (11.3.2). Default 0.9
    # (permanent). 0.9 to 1.6.
    load_duration_factor: float
    # lambda of US LRFD, NDS Table N3; of connections at most 1. Default 0.6 (permanent).
    # 0.6 to 1.
    time_effect_factor: float
    # C_M of connections, US bases. Default: by service class. 0.1 to 1.
    wet_factor: float


class PinSpec(TypedDict, total=False):
    """PinSpec is one pin; all are alike."""

    # Kind. Required.
    kind: PinKind
    # Diameter [mm]. Required. Over 0 to 200.
    diameter_mm: float
    # Tensile strength [MPa]. Required. 10 to 3000.
    fu_mpa: float
    # Yield strength [MPa]. Required. 10 to 3000.
    fy_mpa: float
    # Bending yield strength F_yb [MPa]. Required with the US bases. Default 0:
    # not given. 0 to 3000.
    fy_bending_mpa: float
    # Whether nuts and washers hold a bolt along its axis, which gives the rope
    # effect of the Eurocode. Default false.
    nuts: bool
    # Diameter of washers on the timber, for a plate inside [mm]. Default 0: none.
    # 0 to 10 000.
    washer_diameter_mm: float


class PinnedPlates(TypedDict, total=False):
    """PinnedPlates are the plates of the shoe at the pins."""

    # Where the steel is. Required.
    arrangement: PinPlates
    # Thickness of one plate [mm]. Required. Over 0 to 300.
    thickness_mm: float
    # Thickness lost to corrosion over the design life [mm]. Default: what
    # exposure takes, else 0; a stated 0 is none. 0 to 100.
    corrosion_allowance_mm: float
    # Steel. Required.
    steel: Steel
    # Diameter of the holes d_0 [mm]. Required. Over 0 to 400.
    hole_diameter_mm: float
    # Width of a plate across the column [mm]. Required. Over 0 to 10 000.
    width_mm: float
    # Last pin to the free end of the plate, along the column [mm]. Required. Over
    # 0 to 10 000.
    end_distance_mm: float
    # Middle of the pins above the foot of the plates [mm]. Required. Over 0 to 10
    # 000.
    arm_mm: float
    # Clear gap between plate and timber, on each side [mm]. Default 0. 0 to 1000.
    gap_mm: float
    # Dowel bearing strength of the steel F_e, US bases [MPa]. Default: 1.5 F_u
    # (NDS 2018 Appendix I). 10 to 3000.
    dowel_bearing_strength_mpa: float
    # Line of the column's actions from the middle between the plates, along the
    # pins, either way [mm]; plates outside only. Pins and plates are then held as
    # if both plates carried the share of the nearer. Default 0. 0 to 5000, less
    # than half the column.
    eccentricity_mm: float
    # Whether something else than the plates, such as a wall, a floor or bracing,
    # holds the column's foot against going sideways along the pins, square to the
    # plates. The plates then buckle over their height (K = 1). Otherwise they are
    # cantilevers (K = 2), unless the column keeps their heads upright: bolts with
    # nuts at two levels without a gap, or a plate that fits its slot. Default
    # false.
    foot_held_along_pins: bool


class PinLayout(TypedDict, total=False):
    """PinLayout is how the pins stand."""

    # Rows of pins, which run along the column. Required, 1 to 16.
    rows: int
    # Pins in a row. Required, 1 to 32.
    pins_per_row: int
    # Spacing a_1 along the column [mm]. Required with several in a row. Default
    # 0. 0 to 10 000.
    spacing_along_mm: float
    # Spacing a_2 of the rows [mm]. Required with several rows. Default 0. 0 to 10
    # 000.
    spacing_across_mm: float
    # Nearest pin to the end of the column, a_3 [mm]. Required. Over 0 to 10 000.
    end_distance_mm: float
    # Nearest pin to the nearer edge, a_4 [mm]. Required. Over 0 to 10 000.
    edge_distance_mm: float
    # Group action factor C_g, US bases. Default: computed. 0.05 to 1.
    group_factor: float


class PinForces(TypedDict, total=False):
    """PinForces are the design actions on the joint at the middle of the pins."""

    # Along the column, tension positive [kN]. Default 0. -100 000 to 100 000.
    n_kn: float
    # Across the column, in the plane of the plates [kN]. Default 0. -100 000 to
    # 100 000.
    v_kn: float
    # Moment about the axis of the pins [kNm]. Where its sign beside that of v_kn
    # matters, the worse of both is taken. Default 0. -100 000 to 100 000.
    m_knm: float


class BracketWeld(TypedDict, total=False):
    """BracketWeld is the weld of the plates of a pinned column foot to the base plate
    of the shoe. It runs over the whole width of the plates, and is one group whose
    segments count along the pins.
    """

    # The weld. Its first part is the base plate, its second the plate of the shoe,
    # not thicker than plates.thickness_mm. Required.
    weld: WeldSpec
    # Where it lies. Required.
    lines: BracketWeldLines
    # Whether compression of the plates goes through contact with the base plate,
    # to which they must be fitted. Shear and moment stay with the weld. Default
    # false: the weld carries compression too.
    compression_by_contact: bool


class CheckPinRequest(TypedDict, total=False):
    """CheckPinRequest describes a pinned column foot and its actions."""

    # The caller's own name for this check, echoed in the answer. At most 200
    # characters.
    label: str
    # Standards and factors. Required.
    basis: DesignBasis
    # How much of the answer is sent. Default: limit states.
    detail: Detail
    # What corrodes the steel. Absent: nothing, and parts lose what they state alone.
    exposure: Exposure
    # The end of the column. Required.
    timber: PinnedTimber
    # The pin. Required.
    pin: PinSpec
    # The plates of the shoe. Required.
    plates: PinnedPlates
    # How the pins stand. Required.
    layout: PinLayout
    # Actions. Required.
    forces: PinForces
    # Whether the column's end stands on a plate, which then carries compression
    # instead of the pins. Default false.
    end_bears: bool
    # The weld of the plates to the base plate of the shoe. Absent: not checked.
    bracket_weld: BracketWeld


class FootingRectangle(TypedDict, total=False):
    """FootingRectangle is a rectangular plan."""

    # Size along x [mm]. Required. 50 to 50 000.
    size_x_mm: float
    # Size along y [mm]. Required. 50 to 50 000.
    size_y_mm: float


class FootingCircle(TypedDict, total=False):
    """FootingCircle is a round plan."""

    # Diameter [mm]. Required. 50 to 50 000.
    diameter_mm: float


class Footing(TypedDict, total=False):
    """Footing is a footing on the ground."""

    # A rectangle.
    rectangle: FootingRectangle
    # A circle.
    circle: FootingCircle
    # Depth of its base below the surface [mm]. Default 0. 0 to 50 000.
    depth_mm: float


class Oedometer(TypedDict, total=False):
    """Oedometer is what a compression test says of a clay."""

    # Compression index C_c. Required. Over 0 to 10.
    compression_index: float
    # Recompression index C_r. Required with a preconsolidation pressure. Default
    # 0. 0 to 10.
    recompression_index: float
    # Void ratio e_0. Required. Over 0 to 20.
    void_ratio: float
    # Preconsolidation pressure [kPa]. Default 0: normally consolidated. 0 to 100
    # 000.
    preconsolidation_kpa: float


class GroundLayer(TypedDict, total=False):
    """GroundLayer is a layer of the ground below the base. What is not known is
    left out, and so are the methods that need it.
    """

    # Thickness [mm]. Required. 1 to 100 000.
    thickness_mm: float
    # Modulus of elasticity, drained, for the whole settlement [MPa]. Default 0:
    # not known. 0 to 1 000 000.
    modulus_mpa: float
    # Poisson's ratio. Default 0, which is a value. 0 to 0.5.
    poisson: float
    # Unit weight, wet [kN/m3]. Default 0: not known. 0 to 40.
    unit_weight_kn_m3: float
    # Compression of a clay. Absent: not known.
    oedometer: Oedometer
    # Blow count at 60 % of the energy, N_60. Default 0: not known. 0 to 200.
    n60: float
    # Cone resistance q_c [MPa]. Default 0: not known. 0 to 200.
    cone_resistance_mpa: float


class SettlementStage(TypedDict, total=False):
    """SettlementStage is a state of load, at service values."""

    # Its name. At most 200 characters.
    name: str
    # Mean pressure on the base, net of the ground that the excavation took away
    # [kPa]. 0 to 100 000.
    net_pressure_kpa: float
    # Force on the base, net likewise, compression positive [kN]. 0 to 1 000 000.
    compression_kn: float
    # Moment about x [kNm]. Default 0. -1 000 000 to 1 000 000.
    m_x_knm: float
    # Moment about y [kNm]. Default 0. -1 000 000 to 1 000 000.
    m_y_knm: float


class SettlementLimits(TypedDict, total=False):
    """SettlementLimits are the movements that the structure stands."""

    # Greatest settlement [mm]. Default 50 (EN 1997-1 Annex H, isolated footings).
    # Over 0 to 10 000.
    total_mm: float
    # Greatest angular distortion between neighbours. Default 1/500 (EN 1997-1
    # Annex H). Over 0 to 0.1.
    angular_distortion: float
    # Greatest tilt of the footing, a slope. Default 0: no limit. 0 to 0.1.
    tilt: float


class SettlementNeighbour(TypedDict, total=False):
    """SettlementNeighbour is a footing beside this one."""

    # Between the centres [mm]. Required. 1 to 1 000 000.
    distance_mm: float
    # Settlement of the neighbour [mm]. Default 0. 0 to 10 000.
    settlement_mm: float


class CheckSettlementRequest(TypedDict, total=False):
    """CheckSettlementRequest describes a footing, the ground below it and its
    stages of load.
    """

    # The caller's own name for this check, echoed in the answer. At most 200
    # characters.
    label: str
    # Standards and factors. Required.
    basis: DesignBasis
    # How much of the answer is sent. Default: limit states.
    detail: Detail
    # The footing. Required.
    footing: Footing
    # Whether the footing is rigid. Default false: settlement of the centre and mean tilt
    # of a flexible one, the greater.
    rigid: bool
    # Unit weight of the ground above the base [kN/m3]. Default 0: not known. 0 to
    # 40.
    unit_weight_above_kn_m3: float
    # Depth factor I_f of the elastic settlement. Default 1, on the safe side. 0.5
    # to 1.
    depth_factor: float
    # Depth of the water below the surface [mm]. Default 0: at the surface, on the
    # safe side. 0 to 1 000 000.
    water_depth_mm: float
    # Whether there is no water down to the last layer; a depth of water above counts all
    # the same. Default false.
    dry: bool
    # Layers of the ground from the base down. Required, 1 to 50.
    layers: list[GroundLayer]
    # Whether the last layer goes down without end. Default false: rigid ground
    # follows.
    half_space: bool
    # Greatest effective stress that the sand below the base has known [kPa].
    # Default 0: never more than now. 0 to 100 000.
    preloaded_kpa: float
    # How stress goes down into clay. Default: Boussinesq.
    stress_spread: StressSpread
    # Whether each layer of clay takes one mean stress by Simpson, as by hand, and
    # not thin slices. Default false.
    simpson: bool
    # Years after which the settlement is wanted, for creep of sand. Default 0:
    # without creep. 0 to 1000.
    creep_years: float
    # Stages in the order of time. Required, 1 to 100.
    stages: list[SettlementStage]
    # Movements that the structure stands. Default: those of EN 1997-1 Annex H.
    limits: SettlementLimits
    # Footings beside this one. At most 50.
    neighbours: list[SettlementNeighbour]


class GroundStrength(TypedDict, total=False):
    """GroundStrength is the ground below a base. Give drained strength, undrained
    strength or both; with both the worse counts.
    """

    # Drained angle of friction, characteristic [deg]. Default 0: no drained
    # strength is known. 0 or 1 to 45.
    friction_angle_deg: float
    # Drained cohesion, characteristic [kPa]. Default 0. 0 to 10 000.
    cohesion_kpa: float
    # Angle of friction at constant volume, for sliding [deg]. Default 0: the
    # angle of friction, at most 30 degrees. 0 or 1 to 45.
    critical_angle_deg: float
    # Undrained shear strength c_u, characteristic [kPa]. Default 0: not known. 0
    # to 10 000.
    undrained_strength_kpa: float
    # Unit weight of the ground above the base, the least that stays there
    # [kN/m3]. Default 0: it does not count. 0 to 40.
    unit_weight_above_kn_m3: float
    # Unit weight below the base, wet [kN/m3]. Required with drained strength.
    # Default 0. 0 to 40.
    unit_weight_kn_m3: float
    # Highest water, depth below the surface [mm]. Default 0: at the surface. Water
    # above the base counts as buoyancy. 0 to 1 000 000.
    water_depth_mm: float
    # Whether there is no water within reach; a depth of water above counts all the same.
    # Default false.
    dry: bool


class BaseContact(TypedDict, total=False):
    """BaseContact is the contact between base and ground."""

    # Friction angle of the base over that of the ground: 1 for cast or fill
    # contact, 2/3 for smooth steel. Required. Over 0 to 1.
    friction_share: float
    # Whether neither water nor air can get between the base and undrained clay.
    # Default false.
    sealed: bool


class GranularLayer(TypedDict, total=False):
    """GranularLayer is a strong granular layer over clay. The footing stands on the
    layer, whose strength and weight are those of soil.
    """

    # Thickness below the base [mm]. Required. Over 0 to 100 000. Less than a
    # quarter of the width is out of scope.
    thickness_mm: float
    # Undrained strength of the clay below, characteristic [kPa]. Required. Over 0
    # to 10 000.
    undrained_strength_kpa: float
    # Coefficient K_s of punching shear (Meyerhof and Hanna), for the design
    # strengths. Required. Over 0 to 30.
    punching_coefficient: float


class PresumptivePressure(TypedDict, total=False):
    """PresumptivePressure is an allowable pressure without data of the ground."""

    # Allowable pressure under unfactored loads [kPa]. Required. Over 0 to 100
    # 000.
    pressure_kpa: float
    # Where it comes from. Required, 1 to 300 characters.
    source: str


class CheckFootingRequest(TypedDict, total=False):
    """CheckFootingRequest describes a footing, its actions and the ground."""

    # The caller's own name for this check, echoed in the answer. At most 200
    # characters.
    label: str
    # Standards and factors. Required.
    basis: DesignBasis
    # How much of the answer is sent. Default: limit states.
    detail: Detail
    # The footing. Required.
    footing: Footing
    # Height of the foot of the column, where the actions act, above the base [mm].
    # Required, for without it a shear turns nothing; 0 must be said. 0 to 100 000.
    height_mm: float
    # Permanent actions: characteristic with the Eurocode; with the US bases both
    # together are those of one combination. Required.
    permanent: ForcesAtFoot
    # Variable actions, likewise. Absent: none.
    variable: ForcesAtFoot
    # Whether the variable actions act all at once or not at all. Default false:
    # each check also takes them without their pressing force, on the safe side.
    variable_actions_simultaneous: bool
    # Weight of footing, stack and ground on it, characteristic; with the US bases with
    # the factor of the combination in it [kN]. Required, for it presses on the ground as
    # well as holds; 0 must be said. 0 to 1 000 000.
    weight_kn: float
    # The ground. Required without presumptive.
    soil: GroundStrength
    # Contact between base and ground. Required.
    base_contact: BaseContact
    # A granular layer over clay. Absent: none.
    layer: GranularLayer
    # An allowable pressure without data of the ground. Absent: none.
    presumptive: PresumptivePressure
    # Design approaches of EN 1997-1. Default: all, side by side; the national
    # annex says which counts.
    design_approaches: list[DesignApproach]
    # Author of the bearing factors. Required with the US bases.
    bearing_author: BearingAuthor
    # Whether permanent forces, moments and shears of the column are from other
    # sources than the weight, such as the pretension of a guy or the thrust of
    # earth: the weight then also takes its favourable factor beside their
    # unfavourable one. A permanent lift always counts so. Default false: one source
    # (EN 1990 Table A1.2(B)). Eurocode.
    permanent_apart: bool


class StackShoe(TypedDict, total=False):
    """StackShoe is the plate on top of a stack."""

    # Size along x, or the diameter of a round plate [mm]. Required. 10 to 100
    # 000.
    size_x_mm: float
    # Size along y; of a round plate its diameter again [mm]. Required. 10 to 100
    # 000.
    size_y_mm: float
    # Whether the plate is round. Default false.
    round: bool
    # Diameter of the circle through which the plate presses [mm]; only its
    # outstand limited by bending counts. Default 0: the lesser side. 0 to 100
    # 000.
    loaded_diameter_mm: float


class ContainingRing(TypedDict, total=False):
    """ContainingRing is what holds the fill of a tier together."""

    # Kind. Required.
    kind: RingKind
    # Characteristic hoop force over the whole height of the tier, in one cut
    # through the wall [kN]. Default 0: not known. 0 to 1 000 000.
    capacity_kn: float
    # Hoop force per height of ring and per unit of hoop strain [kN/m]. Default 0:
    # not known. 0 to 1 000 000 000.
    stiffness_kn_m: float
    # Axial strain allowed of the fill in an extensible ring. Default 0.02. 0.001
    # to 0.2.
    axial_strain: float
    # Share of the capacity left by creep, damage and ageing, corrosion among them where no
    # wall_thickness_mm says it. Default: a cautious one by the kind. 0.01 to 1.
    durability_factor: float
    # Share of the capacity that the joint carries. Default: a cautious one by the
    # kind. 0.01 to 1.
    joint_factor: float
    # Partial or safety factor on the capacity. Default: by kind and basis. 1 to
    # 20.
    partial_factor: float
    # Vertical load for which the edge of the ring is rated, pressing evenly all round,
    # design value [kN]; an eccentric load counts by its greatest pressure.
    # Default 0: not rated. 0 to 1 000 000.
    edge_load_kn: float
    # Whether the capacity is from a test of rings of this type. Default false.
    tested: bool
    # Thickness of the wall of a steel ring as built [mm]: beside exposure what the
    # loss of both faces leaves of it is the greatest share of capacity and stiffness that
    # counts. Without it, and without durability, such a ring is out of scope there. 0.1
    # to 100.
    wall_thickness_mm: float
    # Diameter of the bolts in the joint of a steel ring as built [mm]; what corrosion
    # leaves of their area is counted like the wall's. Default: none, or at least twice as
    # thick as the wall, by which they lose less than it. 1 to 100.
    joint_bolt_mm: float
    # Least thickness of lugs, straps and welds in that joint as built [mm], which lose both
    # faces. Default: none is thinner than the wall. 0.1 to 100.
    joint_thickness_mm: float
    # Hoop strain that rings of this type stood in a test while they held the capacity, joint
    # included: it lets the fill become active. Default 0: no more than the stiffness gives.
    # 0 to 0.5.
    tested_strain: float


class RingFill(TypedDict, total=False):
    """RingFill is the granular fill of a tier."""

    # Unit weight [kN/m3]. Required. 5 to 30.
    unit_weight_kn_m3: float
    # Characteristic angle of friction [deg]. Required. 20 to 50.
    friction_angle_deg: float
    # Characteristic effective cohesion [kPa]. Default 0. 0 to 100.
    cohesion_kpa: float
    # Constrained modulus [MPa]. Default 0: by grade. 0 to 1000.
    modulus_mpa: float
    # Grade of compaction, for the modulus. Default: none.
    grade: CompactionGrade
    # Horizontal stress locked in by compaction [kPa]. Default 0. 0 to 1000.
    compaction_stress_kpa: float
    # Whether density and friction were measured on the fill as placed. Default
    # false.
    tested: bool


class RingTier(TypedDict, total=False):
    """RingTier is a ring with its fill."""

    # Inner diameter of the ring [mm]. Required. 50 to 100 000.
    diameter_mm: float
    # Height [mm]. Required. 10 to 5000.
    height_mm: float
    # The ring. Required.
    ring: ContainingRing
    # The fill. Required.
    fill: RingFill


class StackRods(TypedDict, total=False):
    """StackRods clamp a stack between shoe and bottom plate."""

    # Number. Default 0: none. 0 to 64.
    count: int
    # Stress area of each [mm2]. Required with rods. 0 to 100 000.
    area_mm2: float
    # Modulus of elasticity [MPa]. Required with rods. 0 to 1 000 000.
    modulus_mpa: float
    # Length that stretches [mm]. Required with rods. 0 to 100 000.
    length_mm: float
    # Preload of each when tightened [kN]. Default 0. 0 to 100 000.
    preload_kn: float
    # Shortening of the stack after tightening [mm]. Default 0. 0 to 1 000.
    creep_mm: float
    # Stiffness of the stack [kN/mm]. Default 0: from the moduli of the fill. 0 to
    # 1 000 000.
    stack_stiffness_kn_mm: float
    # Preload of each that somebody counts on [kN]. Default 0: none. 0 to 100 000.
    needed_preload_kn: float
    # Share of the preload that relaxation takes. Default 0. 0 to 1.
    relaxation: float


class CheckRingStackRequest(TypedDict, total=False):
    """CheckRingStackRequest describes a stack of rings and what stands on it."""

    # The caller's own name for this check, echoed in the answer. At most 200
    # characters.
    label: str
    # Standards and factors. Required.
    basis: DesignBasis
    # How much of the answer is sent. Default: limit states.
    detail: Detail
    # What corrodes the steel. Absent: nothing, and parts lose what they state alone.
    exposure: Exposure
    # Design actions at the top of the stack. Required.
    forces: ForcesAtFoot
    # Service actions there, for hoop force in service and settlement. Absent: not
    # given.
    service_forces: ForcesAtFoot
    # The plate on top. Required.
    shoe: StackShoe
    # Tiers from the top down. Required, 1 to 8.
    tiers: list[RingTier]
    # Rods that clamp the stack. Absent: none.
    rods: StackRods
    # Whether a stack of this build was loaded, as eccentrically as it will be.
    # Default false.
    load_tested: bool
    # Compression reached in that test [kN]. Required with load_tested. Default 0.
    # 0 to 1 000 000.
    load_test_kn: float
    # Settlement of the stack that is allowed [mm]. Default 0: no limit. 0 to 100
    # 000.
    settlement_limit_mm: float
    # Allowance for the bedding of shoe and tiers [mm]. Default 0. 0 to 100 000.
    bedding_mm: float
    # Whether the load is repeated or of machines, which is out of scope. Default
    # false.
    repeated_load: bool
    # Whether the stack stands on or near a slope, which is out of scope. Default
    # false.
    sloping: bool
    # Whether water stands above the base of the stack, which is out of scope.
    # Default false.
    flooded: bool
    # Lesser side or diameter of the plate through which that test was loaded [mm]: it tells
    # nothing of a smaller one. Default 0: the plate checked here. 0 to 100 000.
    load_test_shoe_mm: float
    # Pressure that a cover surely holds down on the fill beside the plate, design value
    # [kPa], against its heave. Default 0: the fill is open. 0 to 1000.
    cover_kpa: float


class ForceSharing(TypedDict, total=False):
    """ForceSharing says how a rigid plate shares a moment between its bed and rods."""

    # Modulus of subgrade reaction of the bed, k [N/mm3] (1 N/mm3 is 1000 MN/m3):
    # the pressure is elastic. Default 0: a plastic block of the bearing strength,
    # as for concrete. Required on granular fill, where the lever arm is shorter
    # and the rods get more; on a stack of rings, that of its tiers by default. 0 to 10 000.
    subgrade_modulus_n_mm3: float
    # Preload of each rod that is certain to last [kN]; through fill it never is, and a
    # stack of rings fails where it is counted on. Default 0. 0 to 10 000.
    preload_kn: float


class StackBelow(TypedDict, total=False):
    """StackBelow is a stack of rings with the base's plate on top and, where the
    anchorage has one, its bottom plate below.
    """

    # Tiers from the top down. Required, 1 to 8.
    tiers: list[RingTier]
    # Diameter of the circle through which the plate presses [mm]. Default 0: the
    # lesser side, or what the bending of the plate lets past the footprint. 0 to
    # 5000.
    loaded_diameter_mm: float
    # Whether a stack of this build was loaded, as eccentrically as it will be.
    # Default false: no strength of the stack passes without, nor without tests of its
    # rings.
    load_tested: bool
    # Compression reached in that test, at least 1.5 times the service load and the
    # design load [kN]. Required with load_tested. Default 0. 0 to 1 000 000.
    load_test_kn: float
    # Settlement of the stack that is allowed [mm]. Default 0: no limit. 0 to 1000.
    settlement_limit_mm: float
    # Allowance for the bedding of plate and tiers [mm]. Default 0. 0 to 1000.
    bedding_mm: float
    # Design resistance of a bearing path for shear from the plate to the rings,
    # proven elsewhere [kN]. Default 0: friction alone. 0 to 100 000.
    shear_key_kn: float
    # Whether the load is repeated or of machines, which is out of scope. Default
    # false.
    repeated_load: bool
    # Whether the stack stands on or near a slope, which is out of scope. Default
    # false.
    sloping: bool
    # Whether water stands above the base of the stack, which is out of scope.
    # Default false.
    flooded: bool
    # Lesser side or diameter of the plate through which that test was loaded [mm]: it tells
    # nothing of a smaller one. Default 0: the base's own plate. 0 to 5000.
    load_test_shoe_mm: float
    # Pressure that a cover surely holds down on the fill beside the plate, design value
    # [kPa], against its heave. Default 0: the fill is open. 0 to 1000.
    cover_kpa: float


class LevellingLayer(TypedDict, total=False):
    """LevellingLayer is a thin granular layer that makes the ground even."""

    # Thickness [mm]. Required. 1 to 2000.
    thickness_mm: float
    # Unit weight [kN/m3]. Required. 5 to 30.
    unit_weight_kn_m3: float


class PadBars(TypedDict, total=False):
    """PadBars are equal bars at the underside of a pad, the same both ways."""

    # Diameter [mm]. Required. 4 to 60.
    diameter_mm: float
    # Between centres [mm]. Required. 20 to 1000.
    spacing_mm: float


class PadReinforcement(TypedDict, total=False):
    """PadReinforcement are equal bars both ways at the underside of a concrete block."""

    # Bars. Required.
    bars: PadBars
    # Cover of the lower bars and of their ends [mm]. Required. 10 to 500.
    cover_mm: float
    # Yield strength [MPa]: f_yk (Eurocode), f_y (US). Required. 200 to 700.
    fy_mpa: float
    # Length by which every bar is bent up at its ends [mm]. Default 0: straight. 0 to
    # 5000.
    bend_mm: float
    # Whether the size effect in shear counts, which ACI 318-19 13.2.6.2 lets footings
    # neglect; the Eurocode always counts its own. Default false.
    size_effect: bool


class GroundBelow(TypedDict, total=False):
    """GroundBelow is the ground that carries a base. What presses on it is the
    concrete block, or the circle to which the load spreads in the stack, and as
    much of a bottom plate around it as is stiff.
    """

    # Depth below the surface of what presses on the ground: the underside of the
    # levelling layer, or of the footing without one [mm].
    # Default 0. 0 to 50 000.
    depth_mm: float
    # Its strength. Required without presumptive.
    soil: GroundStrength
    # Contact between footing and ground. Required.
    base_contact: BaseContact
    # A granular layer over clay. Absent: none.
    layer: GranularLayer
    # An allowable pressure without data of the ground. Absent: none.
    presumptive: PresumptivePressure
    # Modulus of subgrade reaction [N/mm3]: how stiff the ground is under a bottom
    # plate that reaches past the fill. Default 0: that part does not count. 0 to
    # 100.
    subgrade_modulus_n_mm3: float
    # Design approaches of EN 1997-1. Default: all, side by side; the national
    # annex says which counts.
    design_approaches: list[DesignApproach]
    # Author of the bearing factors. Required with the US bases.
    bearing_author: BearingAuthor
    # Whether permanent forces, moments and shears of the column are from other
    # sources than the weight, such as the pretension of a guy or the thrust of
    # earth: the weight then also takes its favourable factor beside their
    # unfavourable one. A permanent lift always counts so. Default false: one source
    # (EN 1990 Table A1.2(B)). Eurocode.
    permanent_apart: bool


class SettlementBelow(TypedDict, total=False):
    """SettlementBelow is the ground below a base as to its settlement; depth, water
    and the weight of the ground above are those of GroundBelow. The stages are
    those of the actions: permanent actions alone, then the combinations of service
    values that press and that turn most. A stack's own settlement adds to that of the
    ground.
    """

    # Layers of the ground from the base down. Required, 1 to 50.
    layers: list[GroundLayer]
    # Whether the last layer goes down without end. Default false: rigid ground
    # follows.
    half_space: bool
    # Whether a stack is rigid. Default false: its settlement is that of the centre of a
    # flexible footing, and its tilt the mean of one, both the greater. A concrete block
    # always is.
    rigid: bool
    # Depth factor I_f of the elastic settlement. Default 1, on the safe side. 0.5
    # to 1.
    depth_factor: float
    # Greatest effective stress that the sand below the base has known [kPa].
    # Default 0: never more than now. 0 to 100 000.
    preloaded_kpa: float
    # How stress goes down into clay. Default: Boussinesq.
    stress_spread: StressSpread
    # Years after which the settlement is wanted, for creep of sand. Default 0:
    # without creep. 0 to 1000.
    creep_years: float
    # Movements that the structure stands. Default: those of EN 1997-1 Annex H.
    limits: SettlementLimits
    # Footings beside this one, each with all that it settles, its stack included. At
    # most 50.
    neighbours: list[SettlementNeighbour]


class Substructure(TypedDict, total=False):
    """Substructure is what carries a base below its plate: a stack of rings, or the
    concrete block that is the base's support, and the ground.
    """

    # A stack of rings right below the plate. Absent: the base's concrete block
    # stands on the ground.
    stack: StackBelow
    # A levelling layer between footing and ground. It counts by its height and by its
    # weight where that presses; it spreads nothing and holds nothing down. Absent: none.
    levelling: LevellingLayer
    # Weight that is not found from fill, bottom plate, block and levelling layer,
    # such as of rings, rods and soil above, characteristic [kN]. Default 0. 0 to
    # 100 000.
    other_weight_kn: float
    # Unit weight of a concrete block [kN/m3]. Default 24, with bars 25 (EN 1991-1-1
    # Table A.1, from memory). 10 to 40.
    concrete_unit_weight_kn_m3: float
    # Bars of a concrete block that stands on the ground. Absent: plain concrete.
    reinforcement: PadReinforcement
    # The ground. Absent: not checked.
    ground: GroundBelow
    # The ground as to settlement. Absent: not predicted.
    settlement: SettlementBelow
    # Thickness of blinding below a concrete block, on which its bars are placed [mm].
    # It counts for the cover alone. Default 0: none, the block is cast against soil.
    # 0 to 500.
    blinding_mm: float


class ColumnBase(TypedDict, total=False):
    """ColumnBase is a plate with what stands on it, under it and through it."""

    # The plate. Required.
    plate: Plate
    # What stands on it. Required.
    footprint: Footprint
    # What it stands on. Required, but not on a stack of rings whose strength is
    # known: then it is the confined fill of the top tier.
    support: Support
    # Rods that hold it down. Absent: none.
    rods: RodGroup
    # Weld all round the footprint: both faces of flanges, web or plates, the
    # outside of a hollow or solid one. Absent: the weld is not checked.
    weld: WeldSpec
    # How support and rods share a moment.
    sharing: ForceSharing
    # Whether friction under the plate takes shear before the rods do; counted
    # under the compression of each combination. Default false.
    friction: bool
    # What holds the rods below. Absent: not checked.
    anchorage: Anchorage
    # What carries the base below its plate, down to the ground. Absent: the answer
    # ends at the support.
    substructure: Substructure


class Stage(TypedDict, total=False):
    """Stage is a step in the life of the roof."""

    # Its name, such as "ballast on". Required, 1 to 100 characters.
    name: str


class PsiFactors(TypedDict, total=False):
    """PsiFactors are the factors of a variable action by EN 1990 A1.2.2."""

    # psi_0, combination value. Default 0. 0 to 1.
    psi_0: float
    # psi_1, frequent value. Default 0. 0 to 1.
    psi_1: float
    # psi_2, quasi-permanent value. Default 0. 0 to 1.
    psi_2: float


class Action(TypedDict, total=False):
    """Action is one action and what it does at the foot of the column."""

    # Its name, printed in the names of combinations. Required, 1 to 60
    # characters, no two alike.
    name: str
    # What it is. Required.
    kind: ActionKind
    # Category of an imposed action; Eurocode.
    category: ImposedCategory
    # Site of snow; Eurocode.
    snow_site: SnowSite
    # psi factors in place of the table's; Eurocode, variable actions.
    psi: PsiFactors
    # First stage at which it acts, counted from 1. Default 0: the first. 0 to 20.
    first_stage: int
    # Last stage at which it acts, counted from 1. Default 0: it stays. 0 to 20.
    last_stage: int
    # Name of a group of alternatives, the same on each of them: actions of one group
    # never act together, such as wind from several sides, unless they are parts of one
    # whole. It is no action's name. Default empty: it may act with any other. At most
    # 60 characters.
    exclusive_group: str
    # What it does at the foot, as a characteristic or nominal value. Required.
    forces: ForcesAtFoot
    # How long it lasts, for k_mod, C_D and lambda of timber; of a combination that which
    # is there for the shortest time counts. Default by kind. Eurocode (EN 1995-1-1 Table
    # 2.2): permanent PERMANENT; imposed MEDIUM_TERM, of category E LONG_TERM; roof, snow
    # and temperature MEDIUM_TERM; wind SHORT_TERM; accidental INSTANTANEOUS. US: the
    # factors of NDS Tables 2.3.2 and N3 for the kind; stated, C_D and lambda are 0.9 and
    # 0.6, 1.0 and 0.7, 1.15 and 0.8, 1.25 and 0.8, 1.6 and 1.0 from PERMANENT to
    # INSTANTANEOUS. Not SHORT_TERM or INSTANTANEOUS for a permanent action that stays.
    load_duration: LoadDuration
    # Name of the whole of which it is a part, the same on each part; variable actions of
    # one kind.
    # Parts of one whole are one action: they lead or accompany together, with one
    # factor, and each may be absent. Wholes of different names are independent of each
    # other; by ASCE 7, which has no factor for what accompanies, they act together too.
    # Default empty: actions of one kind (imposed ones: of one category) are parts of
    # one action unless they exclude each other. At most 60 characters.
    part_of: str


class ActionSet(TypedDict, total=False):
    """ActionSet is what acts at a foot through its stages."""

    # Stages in the order of time. Default: one, "in use". At most 20.
    stages: list[Stage]
    # The actions. Required, 1 to 16.
    actions: list[Action]
    # Which combinations. Default of CombineActions: strength and, with the
    # Eurocode, equilibrium, the accidental one where an accidental action is given,
    # and the three of serviceability. Default of CheckColumnBase: strength and, with
    # the Eurocode, the accidental one where such an action is given, and equilibrium
    # where there are rods, a stack or the ground; stack and ground take service
    # values, and the ground characteristic and accidental ones, besides. Without
    # strength (or the accidental kind) no strength is verified, and without
    # equilibrium no overturning and no uplift: what passes so is OUT_OF_SCOPE.
    kinds: list[CombinationKind]


class LoadCase(TypedDict, total=False):
    """LoadCase is a combination that the caller has made, by a frame analysis for example.
    
    Strength needs those of design values. Ground, settlement and rings need others too:
    with the Eurocode and US LRFD characteristic ones of every stage, with US ASD factored
    ones where a concrete pad is checked. What is missing leaves out of scope what needs it.
    """

    # Its name, unlike that of every other case. Required, 1 to 200 characters.
    name: str
    # Stage, counted from 1. Default 0: no stage. 0 to 20.
    stage: int
    # Actions on the base, with the values and factors of its kind: by default design
    # values, or service values for ASD. Required.
    forces: ForcesAtFoot
    # What it is a combination for. Default: not told; strength is then checked under it,
    # and nothing that needs characteristic values.
    #
    # Eurocode: any but FACTORED. A characteristic one is for ground, settlement and rings
    # alone; every other is checked for strength as it stands. Once every case states its
    # kind, what only equilibrium proves needs a case of equilibrium.
    # US LRFD: STRENGTH, or CHARACTERISTIC for service values, combined by ASCE 7-22 2.4.1.
    # US ASD: STRENGTH, or FACTORED.
    kind: CombinationKind
    # The sum of the permanent actions among the forces, as they are in them. Of
    # characteristic cases, and with the Eurocode of accidental ones, for which the ground
    # needs it: permanent and variable actions have factors of their own there. Where one
    # permanent action lifts while another presses, give the actions themselves instead.
    permanent: ForcesAtFoot
    # How long it lasts: the shortest of its actions; timber only. US: C_D and lambda as
    # in Action. Default: what base.support.timber says, which then holds for every
    # case that states nothing.
    load_duration: LoadDuration


class LoadCases(TypedDict, total=False):
    """LoadCases are combinations that the caller has made."""

    # The combinations. Required, 1 to 2000.
    cases: list[LoadCase]


class CheckColumnBaseRequest(TypedDict, total=False):
    """CheckColumnBaseRequest describes a column base and what acts on it."""

    # The caller's own name for this check, echoed in the answer. At most 200
    # characters.
    label: str
    # Standards and factors. Required.
    basis: DesignBasis
    # How much of the answer is sent. Default: limit states. A derivation is that
    # of the governing combination.
    detail: Detail
    # What corrodes the steel. Absent: nothing, and parts lose what they state alone.
    exposure: Exposure
    # The base. Required.
    base: ColumnBase
    # Actions, to be combined.
    action_set: ActionSet
    # Combinations made ready.
    load_cases: LoadCases
    # Whether the answer has a row for every combination. Default false.
    include_combinations: bool


class CheckItem(TypedDict, total=False):
    """CheckItem is one check of any kind."""

    # Bearing.
    bearing: CheckBearingRequest
    # Plate bending.
    plate_bending: CheckPlateBendingRequest
    # Weld.
    weld: CheckWeldRequest
    # Anchor rods.
    anchor_rods: CheckAnchorRodsRequest
    # A whole column base.
    column_base: CheckColumnBaseRequest
    # Anchorage.
    anchorage: CheckAnchorageRequest
    # Pins.
    pin: CheckPinRequest
    # Settlement.
    settlement: CheckSettlementRequest
    # Footing on the ground.
    footing: CheckFootingRequest
    # Stack of rings.
    ring_stack: CheckRingStackRequest


class CheckManyRequest(TypedDict, total=False):
    """CheckManyRequest is a list of checks."""

    # The checks, of any kind, mixed. Required, 1 to 10 000. Their answers must fit into
    # one message, 16 MiB unless the service is set otherwise: less detail makes room, and
    # StreamChecks has no such limit as a whole.
    items: list[CheckItem]


class PlatePlan(TypedDict, total=False):
    """PlatePlan is a plan of the plate with the places of its rods."""

    # Size along x [mm]. Required. Over 0 to 5000.
    size_x_mm: float
    # Size along y [mm]. Required. Over 0 to 5000.
    size_y_mm: float
    # Where the rods stand. Default: as in the base. At most 64.
    positions: list[RodPosition]


class RodOffer(TypedDict, total=False):
    """RodOffer is a rod by its thread and steel."""

    # Thread, by designation. Required, at most 60 characters.
    thread: str
    # Grade or class of the steel. Default: that of the base. At most 60
    # characters.
    steel: str
    # For each kg of this rod. Default: rates.rod_per_kg. 0 to 1 000 000.
    per_kg: float


class BottomPlateOffer(TypedDict, total=False):
    """BottomPlateOffer is a bottom plate of the base's own steel."""

    # Size along x [mm]. Required. Over 0 to 5000.
    size_x_mm: float
    # Size along y [mm]. Required. Over 0 to 5000.
    size_y_mm: float
    # Thickness [mm]. Required. Over 0 to 300.
    thickness_mm: float


class StackOffer(TypedDict, total=False):
    """StackOffer is a whole stack of rings."""

    # Tiers from the top down. Required, 1 to 8.
    tiers: list[RingTier]
    # What its rings cost, in the unit of the rates; the fill has a rate. Default 0.
    # 0 to 1 000 000 000.
    rings_cost: float
    # Whether a stack of this build was loaded, as in StackBelow. Default false: only if
    # its tiers are those of the base's own stack, whose test then counts.
    load_tested: bool
    # Compression reached in that test, as in StackBelow [kN]. Required with
    # load_tested. Default 0. 0 to 1 000 000.
    load_test_kn: float


class SizeOffer(TypedDict, total=False):
    """SizeOffer is what may be chosen. Every combination is one choice, at most
    200 000 in all. An empty list leaves the base's own value.
    """

    # Plans of the plate, each with its rods.
    plans: list[PlatePlan]
    # Thicknesses of the plate [mm].
    thickness_mm: list[float]
    # Rods. The clearance of the base's own hole is kept. Needs base.rods.
    rods: list[RodOffer]
    # Throats of the weld [mm]. Needs base.weld, a fillet weld with a throat.
    throat_mm: list[float]
    # Bottom plates. Needs base.anchorage.through.
    bottom_plates: list[BottomPlateOffer]
    # Stacks of rings. Needs base.substructure.stack; the rods stretch over as much
    # more or less as the stack is higher or lower than the base's own.
    stacks: list[StackOffer]


class SizeRates(TypedDict, total=False):
    """SizeRates are what a choice costs, in any one unit: money, kg of carbon, kg."""

    # For each kg of plate, bottom plate included. Default 0. 0 to 1 000 000.
    plate_per_kg: float
    # For each kg of rod: as long as it stretches, with a head in concrete from the head
    # to the upper face of the plate. Default 0. 0 to 1 000 000.
    rod_per_kg: float
    # For each rod with its hole, nuts and washers. Default 0. 0 to 1 000 000.
    each_rod: float
    # For each kg of weld metal. Default 0. 0 to 1 000 000.
    weld_per_kg: float
    # For each kg of fill in the rings. Default 0. 0 to 1 000 000.
    fill_per_kg: float


class SizeColumnBaseRequest(TypedDict, total=False):
    """SizeColumnBaseRequest describes a base, what acts on it and what may be chosen."""

    # The caller's own name, echoed in the answer. At most 200 characters.
    label: str
    # Standards and factors. Required.
    basis: DesignBasis
    # What corrodes the steel. Absent: nothing, and parts lose what they state alone.
    exposure: Exposure
    # The base. What is offered below takes the place of its own value. Required.
    base: ColumnBase
    # Actions, to be combined.
    action_set: ActionSet
    # Combinations made ready.
    load_cases: LoadCases
    # What may be chosen. Required.
    offer: SizeOffer
    # What a choice costs. Default, and where all rates are 0: its mass. What costs
    # nothing beside other rates is named by a notice.
    rates: SizeRates
    # Greatest utilization that passes; least sizes and distances need only be kept.
    # Default 0 counts as 1. 0 to 1.
    max_utilization: float


class RingItem(TypedDict, total=False):
    """RingItem is a ring as it is bought or found."""

    # Outer diameter [mm]. Required. 50 to 100 000.
    outer_diameter_mm: float
    # Mass without fill [kg]. Required. Over 0 to 100 000.
    mass_kg: float
    # Whether it had a life before. Default false; a worn tyre always had.
    reused: bool
    # Loose over compacted volume of its fill. Default 0: not known. 0 or 1 to 3.
    fill_loose_factor: float


class GeotextileItem(TypedDict, total=False):
    """GeotextileItem is a geotextile."""

    # Size along x [mm]. Required. 1 to 100 000.
    size_x_mm: float
    # Size along y [mm]. Required. 1 to 100 000.
    size_y_mm: float
    # Layers. Required. 1 to 100.
    layers: int
    # Share that laps and cuttings add. Default 0. 0 to 2.
    laps: float
    # Mass of a square metre [kg/m2]. Default 0: not known. 0 to 100.
    mass_kg_m2: float


class RingSupply(TypedDict, total=False):
    """RingSupply is what the ring footing takes beside what its check knows."""

    # The ring of each tier, from the top down. Required, as many as tiers.
    rings: list[RingItem]
    # Other steel of the shoe, such as its upright plates [kg]. Default 0. 0 to 100
    # 000.
    brackets_kg: float
    # Nuts and washers of all rods [kg]. Default 0. 0 to 10 000.
    rod_fittings_kg: float
    # Geotextile. Absent: none.
    geotextile: GeotextileItem
    # How far the levelling layer reaches beyond the footing on every side [mm].
    # Default 0. 0 to 5000.
    levelling_margin_mm: float
    # Loose over compacted volume of the levelling layer. Default 0: not known. 0 or
    # 1 to 3.
    levelling_loose_factor: float


class SizeSteps(TypedDict, total=False):
    """SizeSteps are sizes that may be taken: the least, and more by whole steps."""

    # The least [mm]. Required. 50 to 100 000.
    min_mm: float
    # The step [mm]. Required. 1 to 10 000.
    step_mm: float
    # The most [mm]. Required. 50 to 100 000.
    max_mm: float


class PadOffer(TypedDict, total=False):
    """PadOffer is what a concrete pad may be."""

    # Concrete. Required.
    concrete: Concrete
    # Bars of which one is chosen. Empty: plain concrete. At most 50.
    bars: list[PadBars]
    # Cover of the lower bars and of their ends [mm]. Required with bars. Default 0. 0
    # to 500.
    cover_mm: float
    # Length by which every bar is bent up at its ends [mm]. Default 0: straight. 0 to
    # 5000.
    bend_mm: float
    # Yield strength of the bars [MPa]: f_yk (Eurocode), f_y (US). Required with bars.
    # Default 0. 0 or 200 to 700.
    fy_mpa: float
    # Sizes of the plan along x. Default: 500 to 4000 by 50 mm.
    plan: SizeSteps
    # Thicknesses. Default: 250 to 1500 by 50 mm.
    thickness: SizeSteps
    # Size along y over that along x. Default 1. 0.1 to 10.
    aspect: float
    # Depth of the underside below the surface [mm]. Default 0: that of the ring
    # footing. 0 to 50 000.
    depth_mm: float
    # Foot of the column above the top of the pad [mm], with nothing counted between.
    # Absent: the foot stays at the level that it has on the rings, on a plinth of
    # concrete. 0 to 10 000.
    above_mm: float
    # Size of the plinth along x [mm], not less than plate and rods take. Default 0: that
    # of the base's plate. The plinth is counted, not checked. 0 to 5000.
    plinth_x_mm: float
    # Size of the plinth along y [mm]. Default 0: that of the base's plate. 0 to 5000.
    plinth_y_mm: float
    # Rods that hold the shoe on the pad, with heads and nuts [kg]. Default 0: not
    # known, and the totals say that they lack them. 0 to 10 000.
    anchor_rods_kg: float
    # Thickness of blinding below [mm]. Default 0: none. 0 to 500.
    blinding_mm: float
    # Blinding beyond the pad on every side [mm]. Default 0. 0 to 1000.
    blinding_beyond_mm: float
    # Whether the pad is cast against the ground, without formwork and working
    # space. Default false.
    cast_against_ground: bool
    # Starter bars, chairs and laps [kg]. Default 0. 0 to 10 000.
    other_reinforcement_kg: float
    # Unit weight by which the pad is sized [kN/m3]; quantities count 24 and the bars
    # apart. Default 24 plain, 25 reinforced (EN 1991-1-1 Table A.1, from memory). 10 to
    # 40.
    concrete_unit_weight_kn_m3: float
    # Greatest utilization that passes; rules of detailing, such as cover and spacing,
    # need only be kept. Default 0 counts as 1. 0 to 1.
    max_utilization: float
    # Whether the size effect in shear counts, which ACI 318-19 13.2.6.2 lets footings
    # neglect; the Eurocode always counts its own. Default false.
    size_effect: bool


class Excavation(TypedDict, total=False):
    """Excavation is how the ground is dug; its depth is that of each footing."""

    # Working space on every side, at the bottom [mm]. Default 0. 0 to 5000.
    working_space_mm: float
    # Slope of the sides, across for 1 down. Default 0: upright. 0 to 10.
    slope: float
    # Unit weight of the soil in place [kN/m3]. Default 0: that above the base. 0 to 40.
    soil_unit_weight_kn_m3: float
    # Loose over in-place volume of the soil. Default 0: not known. 0 or 1 to 3.
    bulking_factor: float


class RateValue(TypedDict, total=False):
    """RateValue is a rate with its source."""

    # Money, hours or kg CO2e for one kg, m3, m2 or piece, as per says. Default 0, which
    # is a value. 0 to 1 000 000.
    value: float
    # What it counts by.
    per: RateMeasure
    # Where it comes from. Required, 1 to 300 characters.
    source: str


class ItemRate(TypedDict, total=False):
    """ItemRate is what a kind of item takes."""

    # Kind. Required.
    kind: ItemKind
    # Money, in any one currency. Absent: not given.
    cost: RateValue
    # Labour [hours]. Absent: not given.
    hours: RateValue
    # Embodied carbon of the product stage, A1 to A3 [kg CO2e]. Absent: the default,
    # where there is one.
    carbon: RateValue
    # Distance to the site, of surplus soil from it [km]. Default 0: not given. 0 to 50
    # 000.
    distance_km: float
    # Whether it is found on the site, or stays there: no transport. Not with
    # distance_km. Default false.
    on_site: bool


class Transport(TypedDict, total=False):
    """Transport is what a tonne takes over a kilometre."""

    # Money. Absent: not given.
    cost: RateValue
    # Carbon, stage A4 [kg CO2e]. Absent: not given.
    carbon: RateValue


class CompareFootingsRequest(TypedDict, total=False):
    """CompareFootingsRequest describes a ring footing, what a pad may be, and rates."""

    # The caller's own name, echoed in the answer. At most 200 characters.
    label: str
    # Standards and factors. Required.
    basis: DesignBasis
    # What corrodes the steel. Absent: nothing, and parts lose what they state alone.
    exposure: Exposure
    # The base with its stack of rings and the ground below. Required.
    base: ColumnBase
    # What acts on it. Required: the concrete is held to factored actions whatever
    # the basis, so combinations made ready are not enough.
    action_set: ActionSet
    # What a check of the stack does not ask. Required.
    supply: RingSupply
    # What the pad may be. Required.
    pad: PadOffer
    # How the ground is dug. Default: upright sides without working space.
    excavation: Excavation
    # What each kind of item takes. At most 15, one a kind.
    rates: list[ItemRate]
    # What transport takes. Absent: it is left out, and the answer says so.
    transport: Transport
    # Whether nothing stands in for a rate of carbon that is not given. Default
    # false.
    no_default_carbon: bool


class CombineActionsRequest(TypedDict, total=False):
    """CombineActionsRequest describes stages and actions."""

    # The caller's own name, echoed in the answer. At most 200 characters.
    label: str
    # Standards. Required; partial factors of materials are not used here.
    basis: DesignBasis
    # What acts. Required.
    action_set: ActionSet
    # Whether only the combinations of the envelopes are sent. Default false: all.
    envelope_only: bool


class LoadTest(TypedDict, total=False):
    """LoadTest is one load test."""

    # The caller's own name. At most 200 characters.
    name: str
    # What was tested: ring, fill, compaction, plates, preload. Tests of one population
    # have the same. Default empty. At most 500 characters.
    specimen: str
    # Ground unit below. For failure of the ground all must be the same. Default empty. At
    # most 200 characters.
    ground: str
    # Date by ISO 8601, such as 2026-04-30. Default empty; of every test or of none.
    date: str
    # Outer diameter or width [mm]. Default 0: not given. 0 to 100 000.
    size_mm: float
    # Load at failure, or the greatest that was held [kN]. Required. Over 0 to 100 000.
    load_kn: float
    # How the test failed. Default: stopped without failure.
    mode: TestMode
    # Load at the limit of deflection [kN]; where it was not reached, the greatest load.
    # Default 0: not given. Not above load_kn.
    deflection_load_kn: float
    # Resistance that the model of a family predicts [kN]. Default 0: none. 0 to 100 000.
    predicted_kn: float
    # Physical cause on record for which the test does not count. Default empty: it
    # counts. At most 500 characters.
    left_out_because: str


class KnownVariation(TypedDict, total=False):
    """KnownVariation is a coefficient of variation known beforehand, not from these tests."""

    # Coefficient of variation of the resistance. Required. 0.01 to 1; below 0.10 it
    # counts as 0.10 unless 20 comparable tests show it.
    value: float
    # Comparable tests on record that show it. Default 0. 0 to 100 000.
    comparable_tests: int
    # Where it comes from. Required. At most 500 characters.
    source: str
    # Degrees of freedom that it counts as beside the sample (ISO 12491, from memory).
    # Absent: it is known, and the sample only contradicts it or not. 1 to 100.
    prior_degrees_of_freedom: float


class ConversionFactor(TypedDict, total=False):
    """ConversionFactor is one factor of eta_d."""

    # The factor. Required. 0.1 to 1.
    value: float
    # What it stands for, such as wetting or workmanship. Required. At most 500
    # characters.
    reason: str


class PartialFactor(TypedDict, total=False):
    """PartialFactor is a partial factor that the caller answers for."""

    # The factor. Required. 1 to 5.
    value: float
    # Where it comes from. Required. At most 500 characters.
    source: str


class TestCorrelation(TypedDict, total=False):
    """TestCorrelation is the route of EN 1997-1 7.6.2.2(8) for elements tested by load."""

    # xi_1 on the mean, with xi_least. Default 0: Table A.9 by the number of tests. 0 or 1
    # to 3.
    xi_mean: float
    # xi_2 on the least. Default 0: Table A.9. 0 or 1 to 3.
    xi_least: float
    # Whether the structure can shift load between footings: xi / 1.1, not below 1.0.
    # Default false.
    shifts_load: bool
    # gamma_t. Absent: the characteristic value alone.
    partial_factor: PartialFactor
    # Where xi_mean and xi_least come from; required with them. At most 500 characters.
    source: str


class TestReliability(TypedDict, total=False):
    """TestReliability is what phi on the mean of tests needs, by the pattern of AISI S100
    K2.1.1 (from memory).
    """

    # Target beta_0. Default 3.5, of connections and of what breaks without yielding; 2.5
    # of members. 2 to 5.
    beta: float
    # V_M of the material. Default 0.10. 0 to 0.5.
    material_variation: float
    # V_F of fabrication. Default 0.15, of connections; 0.05 of members. 0 to 0.5.
    fabrication_variation: float
    # Dead over live load. Absent: C_phi 1.52 and V_Q 0.21, which are safe from about
    # 0.15 to 1.5. 0 to 10.
    dead_over_live: float


class SizeFamily(TypedDict, total=False):
    """SizeFamily is the size to design of a family, by a model that predicts every size."""

    # Resistance of the size to design by the model at mean values [kN]. Required. Over 0
    # to 100 000.
    predicted_kn: float
    # V_rt of the model's inputs, from ground and fill and not from these tests. Required.
    # Over 0 to 0.5.
    input_variation: float
    # Where the model and its variation come from. Required. At most 500 characters.
    source: str


class AssessLoadTestsRequest(TypedDict, total=False):
    """AssessLoadTestsRequest describes the tests of one population."""

    # The caller's own name, echoed in the answer. At most 200 characters.
    label: str
    # How much of the answer is sent. Default: without derivation.
    detail: Detail
    # The mode whose resistance is asked. Required. A test that ended otherwise counts as
    # having borne its load.
    mode: TestMode
    # The tests, in the order of testing, or with the date of each. Required. 1 to 200.
    tests: list[LoadTest]
    # What is known of the coefficient of variation beforehand. Absent: the sample alone
    # tells.
    variation: KnownVariation
    # Why the log-normal distribution stands. Default empty: the lesser of normal and
    # log-normal stands. At most 500 characters.
    log_normal_because: str
    # Confidence of the bounds where no test failed. Default 0.75. 0.5 to 0.999.
    confidence: float
    # Conversion factors, whose product is eta_d: what the tests do not cover. Empty: no
    # design value, since eta_d = 1 is a decision to state. At most 20.
    conversion_factors: list[ConversionFactor]
    # gamma_M. Absent: the characteristic value alone is found.
    partial_factor: PartialFactor
    # Correlation factors of EN 1997-1 7.6.2.2(8). Absent: Table A.9 without partial
    # factor.
    correlation: TestCorrelation
    # Inputs of the United States' routes. Absent: defaults.
    reliability: TestReliability
    # A family of sizes by EN 1990 D8; every test then needs predicted_kn. Absent: all
    # tests are of one size.
    family: SizeFamily


class TestPlate(TypedDict, total=False):
    """TestPlate is what the load stood on."""

    # Diameter of a round plate [mm]. Default 0: rectangular. 0 to 100 000.
    diameter_mm: float
    # Size of a rectangular plate along x [mm]. Default 0: round. 0 to 100 000.
    size_x_mm: float
    # Size along y [mm]. Default 0: round. 0 to 100 000.
    size_y_mm: float
    # Radius of the circle on which the gauges stand at equal angles [mm]. Default 0: no
    # tilt is read. 0 to 100 000.
    gauge_radius_mm: float


class TestReading(TypedDict, total=False):
    """TestReading is one reading of the gauges."""

    # Time from the start of the stage [min]. Default 0. 0 to 10 000 000.
    minutes: float
    # Settlement at each gauge [mm], positive down. Required. 1 to 12, as many in every
    # reading, each -1000 to 10 000.
    settlements_mm: list[float]
    # Load at the reading [kN]. Default 0: that of the stage. 0 to 100 000.
    load_kn: float


class TestStage(TypedDict, total=False):
    """TestStage is one stage of load."""

    # What it belongs to. Required.
    phase: TestPhase
    # Load, by a cell and not by the pump alone [kN]. Default 0. 0 to 100 000.
    load_kn: float
    # Readings in the order of time; the last one counts for the stage. Required. 1 to
    # 1000.
    readings: list[TestReading]


class TestDamage(TypedDict, total=False):
    """TestDamage is damage that was seen in a test."""

    # Stage at which it was seen, counted from 1. Required. 1 to 200.
    stage: int
    # What was seen: a ring split, a weld, a plate bent, a rod slack on one side. Required.
    # At most 500 characters.
    what: str


class TestClamp(TypedDict, total=False):
    """TestClamp is fill held between plates by tightened rods: two springs side by side
    until the rods go slack.
    """

    # Stiffness of the fill, E_oed A/h [kN/mm]. Required. Over 0 to 100 000.
    fill_stiffness_kn_mm: float
    # Stiffness of all rods, n E A_s/L [kN/mm]. Required. Over 0 to 100 000.
    rod_stiffness_kn_mm: float
    # Preload of all rods [kN]. Default 0. 0 to 100 000.
    preload_kn: float
    # Embedment of the fill under the plate since tightening [mm]. Default 0. 0 to 100.
    embedment_mm: float


class PreloadReading(TypedDict, total=False):
    """PreloadReading is one reading of the force of all rods."""

    # Time since tightening [min]. Required. Over 0 to 100 000 000.
    minutes: float
    # Force of all rods, by elongation [kN]. Default 0. 0 to 100 000.
    force_kn: float


class ReadLoadTestRequest(TypedDict, total=False):
    """ReadLoadTestRequest is the record of one load test."""

    # The caller's own name, echoed in the answer. At most 200 characters.
    label: str
    # How much of the answer is sent. Default: without derivation.
    detail: Detail
    # The plate, or the base of the stack. Required.
    plate: TestPlate
    # The stages of load, in the order of time. Required. 1 to 200.
    stages: list[TestStage]
    # Whether the load of the last stage could not be held. Default false.
    plunged: bool
    # Damage that was seen. Absent: none.
    damage: TestDamage
    # Poisson's ratio for E_PLT. Default 0.3; 0.5 for undrained fine ground. 0 to 0.5.
    poisson: float
    # Settlement at which the subgrade reaction is read [mm]. Default 1.25 (DIN 18134, from
    # memory). 0.1 to 100.
    subgrade_settlement_mm: float
    # Least width of the footing to which the subgrade reaction is carried [mm]. Default
    # 0: not asked. 0 to 100 000.
    footing_width_mm: float
    # Whether the ground is clay: another scale, and creep is a lower bound. Default false:
    # sand.
    clay: bool
    # Design life for creep and preload [years]. Default 0: not asked. 0 to 200.
    design_life_years: float
    # Fill clamped between plates by tightened rods. Absent: none.
    clamp: TestClamp
    # Forces of the rods after tightening, in the order of time. Empty: not measured. At
    # most 1000.
    preload_record: list[PreloadReading]


class ListDesignBasesRequest(TypedDict, total=False):
    """ListDesignBasesRequest asks for the design bases."""

    pass


class ListSteelsRequest(TypedDict, total=False):
    """ListSteelsRequest asks for the steels."""

    pass


class ListRodSteelsRequest(TypedDict, total=False):
    """ListRodSteelsRequest asks for the rod steels."""

    pass


class ListThreadsRequest(TypedDict, total=False):
    """ListThreadsRequest asks for the threads."""

    pass


class ListWeldMetalsRequest(TypedDict, total=False):
    """ListWeldMetalsRequest asks for the fillers."""

    pass


class ListConcretesRequest(TypedDict, total=False):
    """ListConcretesRequest asks for the concretes."""

    pass


class ListTimbersRequest(TypedDict, total=False):
    """ListTimbersRequest asks for the timbers."""

    pass


class ListUnitWeightsRequest(TypedDict, total=False):
    """ListUnitWeightsRequest asks for unit weights."""

    pass


class ListLimitStatesRequest(TypedDict, total=False):
    """ListLimitStatesRequest asks for the limit states."""

    pass


class ListNoticesRequest(TypedDict, total=False):
    """ListNoticesRequest asks for the notices."""

    pass
