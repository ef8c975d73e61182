# Written from the contract by .ci/generate. Do not edit.
"""The responses of the contract, as data classes.

What has no value is None, such as the utilization where there is no resistance."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import List, Literal, Optional

# Basis is the family of standards by which a check is made.
Basis = Literal[
    # Not stated: refused, there is no default basis.
    "BASIS_UNSPECIFIED",
    # EN 1990 to EN 1997 by partial factors.
    "BASIS_EUROCODE",
    # United States practice by load and resistance factors (AISC 360-22, NDS
    # 2018 LRFD). Actions are factored (required strengths by ASCE 7-22 2.3).
    "BASIS_US_LRFD",
    # United States practice by allowable strength (AISC 360-22, NDS 2018 ASD).
    # Actions are not factored (required strengths by ASCE 7-22 2.4).
    "BASIS_US_ASD",
]

# Verdict is the outcome of a limit state or of a whole check.
Verdict = Literal[
    # Never sent.
    "VERDICT_UNSPECIFIED",
    # The demand does not exceed the resistance.
    "VERDICT_PASS",
    # The demand exceeds the resistance.
    "VERDICT_FAIL",
    # There is nothing to check here; the reason says why.
    "VERDICT_NOT_APPLICABLE",
    # The chosen basis does not cover the case: an engineer must judge. The
    # reason says what is missing.
    "VERDICT_OUT_OF_SCOPE",
]

# SizeKind names the dimension that a required size is about.
SizeKind = Literal[
    # No required size is given.
    "SIZE_KIND_UNSPECIFIED",
    # Thickness of the plate, corrosion allowance included [mm].
    "SIZE_KIND_PLATE_THICKNESS",
    # Throat of the weld, corrosion allowance included [mm].
    "SIZE_KIND_WELD_THROAT",
    # Leg of the fillet weld, corrosion allowance included [mm].
    "SIZE_KIND_WELD_LEG",
    # Length of the weld run [mm].
    "SIZE_KIND_WELD_LENGTH",
    # Nominal diameter of the rod [mm].
    "SIZE_KIND_ROD_DIAMETER",
    # Side of a square contact area that would do [mm].
    "SIZE_KIND_CONTACT_SIDE",
    # Diameter of the hole [mm].
    "SIZE_KIND_HOLE_DIAMETER",
    # Diameter of a pin; its holes grow with it [mm].
    "SIZE_KIND_PIN_DIAMETER",
    # Size of the column along the pins [mm].
    "SIZE_KIND_COLUMN_THICKNESS",
    # Spacing of the pins along the column [mm].
    "SIZE_KIND_PIN_SPACING_ALONG",
    # Spacing of the rows of pins [mm].
    "SIZE_KIND_PIN_SPACING_ACROSS",
    # Distance of the nearest pin to the end of the column [mm].
    "SIZE_KIND_PIN_END_DISTANCE",
    # Distance of the nearest pin to the edge of the column [mm].
    "SIZE_KIND_PIN_EDGE_DISTANCE",
    # Distance of the last pin to the free end of the plates of the shoe [mm].
    "SIZE_KIND_BRACKET_END_DISTANCE",
    # Width of the plates of the shoe [mm].
    "SIZE_KIND_BRACKET_WIDTH",
    # Thickness of a concrete pad [mm].
    "SIZE_KIND_PAD_THICKNESS",
    # Area of bars per width [mm2/mm].
    "SIZE_KIND_STEEL_PER_WIDTH",
]

# Evidence is how well the number of a limit state is held by something outside
# this service.
Evidence = Literal[
    # Not known: an answer of a service before this field.
    "EVIDENCE_UNSPECIFIED",
    # Printed figures of a standard, handbook or worked example are reproduced, for
    # this code family.
    "EVIDENCE_PRINTED",
    # No printed figure was found: worked by hand from the clause, or computed in a
    # second way.
    "EVIDENCE_WORKED",
    # An engineering model outside the codes; what holds it is statics and the
    # second ways of the tests. Load tests or observation must stand beside it.
    "EVIDENCE_MODEL",
]

# Severity ranks notices.
Severity = Literal[
    # Never sent.
    "SEVERITY_UNSPECIFIED",
    # For information: a choice that the calculation made.
    "SEVERITY_INFO",
    # An assumption that the designer must confirm.
    "SEVERITY_ASSUMPTION",
    # A caution: a limit of the method or something that was not checked.
    "SEVERITY_CAUTION",
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

# FieldReason is the kind of fault of a refused field.
FieldReason = Literal[
    # Never sent.
    "FIELD_REASON_UNSPECIFIED",
    # The field is required and missing.
    "FIELD_REASON_MISSING",
    # The value is outside its allowed range, or not a finite number.
    "FIELD_REASON_OUT_OF_RANGE",
    # An enum value, name or text that is not known.
    "FIELD_REASON_UNKNOWN_VALUE",
    # Two fields exclude each other.
    "FIELD_REASON_CONFLICT",
    # The fields do not fit together as a body in space.
    "FIELD_REASON_GEOMETRY",
    # Too many or too few elements, or a text too long.
    "FIELD_REASON_COUNT",
]

# SizeDimension is what is chosen.
SizeDimension = Literal[
    # Never sent.
    "SIZE_DIMENSION_UNSPECIFIED",
    # Plan of the plate.
    "SIZE_DIMENSION_PLAN",
    # Thickness of the plate.
    "SIZE_DIMENSION_THICKNESS",
    # Rods.
    "SIZE_DIMENSION_ROD",
    # Throat of the weld.
    "SIZE_DIMENSION_THROAT",
    # Bottom plate.
    "SIZE_DIMENSION_BOTTOM_PLATE",
    # Stack of rings.
    "SIZE_DIMENSION_STACK",
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

# PadDimension is what of a pad is smaller.
PadDimension = Literal[
    # Never sent.
    "PAD_DIMENSION_UNSPECIFIED",
    # Plan.
    "PAD_DIMENSION_PLAN",
    # Thickness.
    "PAD_DIMENSION_THICKNESS",
    # Bars.
    "PAD_DIMENSION_BARS",
]

# ForceComponent is one of the six forces at the foot.
ForceComponent = Literal[
    # Never sent.
    "FORCE_COMPONENT_UNSPECIFIED",
    # N.
    "FORCE_COMPONENT_N",
    # V_x.
    "FORCE_COMPONENT_V_X",
    # V_y.
    "FORCE_COMPONENT_V_Y",
    # M_x.
    "FORCE_COMPONENT_M_X",
    # M_y.
    "FORCE_COMPONENT_M_Y",
    # T.
    "FORCE_COMPONENT_T",
]

# TestRoute is how a characteristic value was found.
TestRoute = Literal[
    # It was not found.
    "TEST_ROUTE_UNSPECIFIED",
    # EN 1990 D7: every test failed by the mode.
    "TEST_ROUTE_ANNEX_D",
    # Likelihood, log-normal, V known: some tests did not fail by the mode.
    "TEST_ROUTE_LIKELIHOOD",
    # No test failed by the mode: loads held count as failures, V known. A lower bound.
    "TEST_ROUTE_SURVIVORS",
    # EN 1990 D8: sizes of a family.
    "TEST_ROUTE_FAMILY",
]

# FailureCriterion is a way to call a loaded footing failed.
FailureCriterion = Literal[
    # None.
    "FAILURE_CRITERION_UNSPECIFIED",
    # A load could not be held; the greatest held before counts.
    "FAILURE_CRITERION_PLUNGE",
    # Settlement of a tenth of the width (EN 1997-2, from memory).
    "FAILURE_CRITERION_TENTH_OF_WIDTH",
    # Where the initial and the final line meet.
    "FAILURE_CRITERION_TANGENTS",
    # Where creep breaks upward and doubles.
    "FAILURE_CRITERION_CREEP",
    # Damage that was seen; the greatest load before counts.
    "FAILURE_CRITERION_DAMAGE",
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

# CheckKind names a check.
CheckKind = Literal[
    # Of no check.
    "CHECK_KIND_UNSPECIFIED",
    # CheckBearing.
    "CHECK_KIND_BEARING",
    # CheckPlateBending.
    "CHECK_KIND_PLATE_BENDING",
    # CheckWeld.
    "CHECK_KIND_WELD",
    # CheckAnchorRods.
    "CHECK_KIND_ANCHOR_RODS",
    # CheckColumnBase; its own limit states, besides those of the parts.
    "CHECK_KIND_COLUMN_BASE",
    # CheckService.CheckAnchorage.
    "CHECK_KIND_ANCHORAGE",
    # CheckService.CheckPin.
    "CHECK_KIND_PIN",
    # CheckService.CheckSettlement.
    "CHECK_KIND_SETTLEMENT",
    # CheckService.CheckFooting.
    "CHECK_KIND_FOOTING",
    # CheckService.CheckRingStack.
    "CHECK_KIND_RING_STACK",
    # Concrete pad, as CompareService sizes it.
    "CHECK_KIND_CONCRETE_PAD",
]


@dataclass
class RequiredSize:
    """RequiredSize is the least size by which a limit state holds."""

    # What it is the size of.
    kind: SizeKind = "SIZE_KIND_UNSPECIFIED"
    # The size, in the unit below.
    value: float = 0.0
    # mm, or mm2/mm for bars per width.
    unit: str = ""


@dataclass
class LimitState:
    """LimitState is one way in which the part can fail, checked."""

    # Stable name in snake case, such as rod_tension; CatalogService lists all.
    id: str = ""
    # What it is, in words.
    title: str = ""
    # Standard and clause of the resistance.
    clause: str = ""
    # Demand, in the unit below; never negative.
    demand: float = 0.0
    # Design (LRFD, Eurocode) or allowable (ASD) resistance, in the unit below.
    # Absent where there is no resistance.
    resistance: Optional[float] = None
    # Unit of demand and resistance: kN, kNm, kN/m, kNm/m, MPa, mm, or empty.
    unit: str = ""
    # Demand over resistance. Absent where there is no resistance.
    utilization: Optional[float] = None
    # The outcome.
    verdict: Verdict = "VERDICT_UNSPECIFIED"
    # Why, for NOT_APPLICABLE and OUT_OF_SCOPE, and for FAIL where the numbers
    # alone do not say it.
    reason: str = ""
    # Least size that would satisfy this limit state, all else unchanged. Absent where the
    # equation cannot be inverted.
    required_size: Optional[RequiredSize] = None
    # The rod, weld segment or joined part that governs, counted from 1 in the
    # order of the request. 0 where the limit state is about the whole.
    member: int = 0
    # Of a column base: the combination that is worst for this limit state.
    combination: str = ""
    # Of a column base: the stage of that combination, counted from 1.
    stage: int = 0
    # How well the number is held; footward evidence prints every held figure.
    evidence: Evidence = "EVIDENCE_UNSPECIFIED"
    # Of a column base: place of that combination in combinations, counted from 0. Absent
    # where no single combination is meant.
    combination_index: Optional[int] = None
    # Of a column base: the stage of that combination, counted from 0. Absent: none.
    stage_index: Optional[int] = None


@dataclass
class Notice:
    """Notice is a remark that the designer must read."""

    # Stable name in snake case; CatalogService lists all.
    code: str = ""
    # How serious it is.
    severity: Severity = "SEVERITY_UNSPECIFIED"
    # The remark in words; empty at DETAIL_GOVERNING.
    text: str = ""


@dataclass
class FactorUsed:
    """FactorUsed is one partial or resistance factor and the value used."""

    # The standard's symbol, such as gamma_M2 or phi.
    symbol: str = ""
    # The value used.
    value: float = 0.0
    # Where the value comes from: the clause, or "given in the request".
    source: str = ""


@dataclass
class DerivationStep:
    """DerivationStep is one line of the calculation, to be followed with a pencil.
    All steps use N, mm and MPa, so that the numbers can be put in as they are.
    """

    # Symbol of the quantity, such as f_jd.
    symbol: str = ""
    # The formula in plain characters; a blank between two factors multiplies.
    expression: str = ""
    # The same formula with the numbers put in.
    numbers: str = ""
    # The value, in the unit below.
    value: float = 0.0
    # N, mm, mm2, mm3, mm4, MPa, Nmm, N/mm, rad; empty without dimension.
    unit: str = ""
    # Standard and clause, or where else the step comes from.
    clause: str = ""


@dataclass
class CombinationTerm:
    """CombinationTerm is one action in a combination."""

    # Place of the action in the request, counted from 0.
    action: int = 0
    # What it is multiplied by.
    factor: float = 0.0


@dataclass
class ForcesAtFoot:
    """ForcesAtFoot are the actions of the column on its base at the plate's upper
    face, on the plate's centre. Signs: see the drawing at the top of this file.
    Design values for Eurocode and LRFD, unfactored combinations for ASD.
    """

    # Axial force [kN]: positive pulls up (tension), negative presses down
    # (compression). Default 0. -100 000 to 100 000.
    n_kn: float = 0.0
    # Shear along x [kN], positive towards +x. Default 0. -100 000 to 100 000.
    v_x_kn: float = 0.0
    # Shear along y [kN], positive towards +y. Default 0. -100 000 to 100 000.
    v_y_kn: float = 0.0
    # Moment about x [kNm]: positive presses the -y side. Default 0.
    # -100 000 to 100 000.
    m_x_knm: float = 0.0
    # Moment about y [kNm]: positive presses the +x side. Default 0.
    # -100 000 to 100 000.
    m_y_knm: float = 0.0
    # Torsion about z [kNm]: positive counter-clockwise from above. Default 0.
    # -100 000 to 100 000.
    t_knm: float = 0.0


@dataclass
class Combination:
    """Combination is one combination of actions."""

    # Its name as the standard writes it, such as "EN 1990 (6.10): 1.35 frame +
    # 1.5 snow + 0.9 wind".
    name: str = ""
    # What it is for.
    kind: CombinationKind = "COMBINATION_KIND_UNSPECIFIED"
    # Stage, counted from 1.
    stage: int = 0
    # The actions in it; those that are left out act favourably or cannot act.
    terms: List[CombinationTerm] = field(default_factory=list)
    # The sum at the foot.
    forces: Optional[ForcesAtFoot] = None
    # How long it lasts, for timber; Eurocode.
    load_duration: LoadDuration = "LOAD_DURATION_UNSPECIFIED"
    # C_D of NDS for timber; US ASD. [-]
    load_duration_factor: Optional[float] = None
    # lambda of NDS for timber; US LRFD. [-]
    time_effect_factor: Optional[float] = None


@dataclass
class PlanPoint:
    """PlanPoint is a point in the plan of a plate, from its centre."""

    # Along x [mm].
    x_mm: float = 0.0
    # Along y [mm].
    y_mm: float = 0.0


@dataclass
class ContactState:
    """ContactState is where a plate presses on what is below it under one combination:
    that of the bed and the rods as they are given. Pressures and tensions that are
    checked may be greater, since rods may be stiffer or tighter than that.
    """

    # Area pressed [mm2].
    area_mm2: float = 0.0
    # Corners of the pressed zone in their order; empty: nothing is pressed.
    outline: List[PlanPoint] = field(default_factory=list)
    # Direction in which the pressure rises, counter-clockwise from x [deg]. -180 to 180.
    # Absent: the pressure is the same everywhere.
    neutral_axis_deg: Optional[float] = None
    # From the centre of the plate to the line where the pressure begins, along that
    # direction [mm]: negative where the centre is pressed. Absent: no such line.
    neutral_axis_offset_mm: Optional[float] = None
    # Greatest pressure [MPa].
    peak_pressure_mpa: float = 0.0
    # Where it is: that of equal ones which comes first in the outline. Absent: nothing is
    # pressed.
    peak: Optional[PlanPoint] = None


@dataclass
class RodForce:
    """RodForce is the action on one rod."""

    # Tension [kN]; a rod in compression is out of scope. Default 0. 0 to
    # 100 000.
    tension_kn: float = 0.0
    # Shear along x [kN]. Default 0. -100 000 to 100 000.
    shear_x_kn: float = 0.0
    # Shear along y [kN]. Default 0. -100 000 to 100 000.
    shear_y_kn: float = 0.0


@dataclass
class CombinationRow:
    """CombinationRow is what a base does under one combination."""

    # Its name.
    combination: str = ""
    # Its stage, counted from 1; 0: none.
    stage: int = 0
    # What acts.
    forces: Optional[ForcesAtFoot] = None
    # The outcome under it.
    verdict: Verdict = "VERDICT_UNSPECIFIED"
    # The limit state that governs under it.
    governing_limit_state_id: str = ""
    # Its utilization.
    governing_utilization: Optional[float] = None
    # Greatest pressure under the plate [MPa].
    peak_pressure_mpa: float = 0.0
    # Tension of each rod, in the order of the request [kN].
    rod_tensions_kn: List[float] = field(default_factory=list)
    # Place of the combination in combinations, counted from 0.
    combination_index: int = 0
    # Where the plate presses. Absent where nothing balances the actions.
    contact: Optional[ContactState] = None
    # What each rod is checked with, in the order of the request: tension with what
    # prying adds, and shear less what friction takes. Empty where nothing balances.
    rod_forces: List[RodForce] = field(default_factory=list)


@dataclass
class StageSettlement:
    """StageSettlement is what one stage comes to."""

    # Its name.
    name: str = ""
    # Net pressure [kPa].
    pressure_kpa: float = 0.0
    # By elasticity, of the footing as it is [mm]; absent: data are missing.
    elastic_mm: Optional[float] = None
    # Of sand by cone resistance, Schmertmann [mm]; absent: data are missing.
    schmertmann_mm: Optional[float] = None
    # Of sand by blow count, Burland and Burbidge [mm]; absent: data are missing.
    burland_burbidge_mm: Optional[float] = None
    # Of clay by one-dimensional consolidation [mm]; absent: data are missing.
    consolidation_mm: Optional[float] = None
    # By elasticity, of the centre if the footing were flexible [mm].
    centre_mm: float = 0.0
    # Steepest slope of the footing by elasticity, with what stands on the ground.
    tilt: float = 0.0
    # Of all layers, what different methods find of different layers added [mm];
    # absent: nothing is to be added, or a layer is not known.
    total_mm: Optional[float] = None
    # What stands on the ground, such as a stack, settles by itself in this stage
    # [mm]. It adds to each of the figures above, which are of the ground alone.
    above_mm: float = 0.0
    # Of CheckColumnBase: place of the combination in result.combinations,
    # counted from 0. Absent: the permanent actions of the stage alone.
    combination_index: Optional[int] = None
    # Of CheckColumnBase: the stage of the actions, counted from 0. Absent: none.
    stage_index: Optional[int] = None


@dataclass
class CheckResult:
    """CheckResult is the answer of one check."""

    # The caller's label, unchanged.
    label: str = ""
    # The basis by which the check was made.
    basis: Basis = "BASIS_UNSPECIFIED"
    # Edition of its standards, by name.
    edition: str = ""
    # National annex by which it was made; empty: the recommended values.
    annex: str = ""
    # FAIL when any limit state fails; else OUT_OF_SCOPE when any is out of
    # scope; else PASS; NOT_APPLICABLE when there was nothing to check.
    verdict: Verdict = "VERDICT_UNSPECIFIED"
    # Why, when the whole check is out of scope or not applicable; else empty.
    reason: str = ""
    # Id of the limit state that governs: one that fails without a utilization,
    # else the highest utilization. Empty when none has either.
    governing_limit_state_id: str = ""
    # Utilization of the governing limit state, demand over resistance. Absent
    # when it has none.
    governing_utilization: Optional[float] = None
    # Every limit state of the check in its fixed order; empty at
    # DETAIL_GOVERNING.
    limit_states: List[LimitState] = field(default_factory=list)
    # Assumptions, cautions and limits of validity. At DETAIL_GOVERNING without
    # text.
    notices: List[Notice] = field(default_factory=list)
    # Partial and resistance factors used; empty at DETAIL_GOVERNING.
    factors: List[FactorUsed] = field(default_factory=list)
    # The calculation step by step; only at DETAIL_DERIVATION.
    derivation: List[DerivationStep] = field(default_factory=list)
    # Of a column base: the combinations that the answer refers to, each once; with their
    # rows every one that was checked for strength. Empty at DETAIL_GOVERNING without rows.
    combinations: List[Combination] = field(default_factory=list)
    # Of a column base: a row for every combination, when the request asks for them.
    combination_rows: List[CombinationRow] = field(default_factory=list)
    # Of a settlement and of a column base whose ground has one: what each stage results in.
    # Empty at DETAIL_GOVERNING.
    settlement_stages: List[StageSettlement] = field(default_factory=list)


@dataclass
class BasisEdition:
    """BasisEdition is a basis with the editions of its standards."""

    # The basis.
    basis: Basis = "BASIS_UNSPECIFIED"
    # Standards with their editions, in one line.
    editions: str = ""


@dataclass
class Provenance:
    """Provenance says what produced an answer."""

    # Version of the service.
    service_version: str = ""
    # Revision of the calculation kernel: grows when a result may change.
    kernel_revision: int = 0
    # The bases used, each with the editions of its standards.
    bases: List[BasisEdition] = field(default_factory=list)
    # What every answer is and is not.
    caution: str = ""


@dataclass
class CheckBearingResponse:
    """CheckBearingResponse answers CheckBearing."""

    # The answer.
    result: Optional[CheckResult] = None
    # What produced it.
    provenance: Optional[Provenance] = None


@dataclass
class CheckPlateBendingResponse:
    """CheckPlateBendingResponse answers CheckPlateBending."""

    # The answer.
    result: Optional[CheckResult] = None
    # What produced it.
    provenance: Optional[Provenance] = None


@dataclass
class CheckWeldResponse:
    """CheckWeldResponse answers CheckWeld."""

    # The answer.
    result: Optional[CheckResult] = None
    # What produced it.
    provenance: Optional[Provenance] = None


@dataclass
class CheckAnchorRodsResponse:
    """CheckAnchorRodsResponse answers CheckAnchorRods."""

    # The answer.
    result: Optional[CheckResult] = None
    # What produced it.
    provenance: Optional[Provenance] = None


@dataclass
class CheckAnchorageResponse:
    """CheckAnchorageResponse answers CheckAnchorage."""

    # The answer.
    result: Optional[CheckResult] = None
    # What produced it.
    provenance: Optional[Provenance] = None


@dataclass
class CheckPinResponse:
    """CheckPinResponse answers CheckPin."""

    # The answer.
    result: Optional[CheckResult] = None
    # What produced it.
    provenance: Optional[Provenance] = None


@dataclass
class CheckSettlementResponse:
    """CheckSettlementResponse answers CheckSettlement."""

    # The answer: for each method its greatest settlement against the limit.
    result: Optional[CheckResult] = None
    # What produced it.
    provenance: Optional[Provenance] = None


@dataclass
class CheckFootingResponse:
    """CheckFootingResponse answers CheckFooting."""

    # The answer.
    result: Optional[CheckResult] = None
    # What produced it.
    provenance: Optional[Provenance] = None


@dataclass
class CheckRingStackResponse:
    """CheckRingStackResponse answers CheckRingStack."""

    # The answer.
    result: Optional[CheckResult] = None
    # What produced it.
    provenance: Optional[Provenance] = None


@dataclass
class FieldViolation:
    """FieldViolation names one field that was refused."""

    # Path of the field from the request (in a batch: from the item), such as
    # plate.size_x_mm or rods.positions[2].x_mm.
    field: str = ""
    # What is wrong, with value, limit and unit.
    description: str = ""
    # The kind of fault.
    reason: FieldReason = "FIELD_REASON_UNSPECIFIED"


@dataclass
class Refusal:
    """Refusal says why an item could not be checked."""

    # Every field that was refused.
    violations: List[FieldViolation] = field(default_factory=list)


@dataclass
class CheckOutcome:
    """CheckOutcome is what became of one item."""

    # Place of the item, counted from 0: in the call for CheckMany, over the whole
    # stream for StreamChecks.
    index: int = 0
    # The answer, the same as of the item alone.
    result: Optional[CheckResult] = None
    # The fields for which the item was refused.
    refusal: Optional[Refusal] = None


@dataclass
class CheckManyResponse:
    """CheckManyResponse answers CheckMany."""

    # As many outcomes as items, in the same order.
    outcomes: List[CheckOutcome] = field(default_factory=list)
    # What produced them.
    provenance: Optional[Provenance] = None


@dataclass
class CheckColumnBaseResponse:
    """CheckColumnBaseResponse answers CheckColumnBase."""

    # The answer: for each limit state the worst combination, which it names.
    result: Optional[CheckResult] = None
    # What produced it.
    provenance: Optional[Provenance] = None


@dataclass
class SizeChoice:
    """SizeChoice is one choice."""

    # Places in the lists of the offer, counted from 0; 0 for an empty list.
    plan: int = 0
    # Place of the thickness.
    thickness: int = 0
    # Place of the rod.
    rod: int = 0
    # Place of the throat.
    throat: int = 0
    # Size of the plate along x [mm].
    size_x_mm: float = 0.0
    # Size of the plate along y [mm].
    size_y_mm: float = 0.0
    # Thickness of the plate [mm].
    thickness_mm: float = 0.0
    # Thread of the rods; empty without rods.
    thread_designation: str = ""
    # Throat of the weld [mm]; 0 without weld.
    throat_mm: float = 0.0
    # Mass of plates, rods as in SizeRates, weld metal and fill [kg].
    mass_kg: float = 0.0
    # Its cost by the rates.
    cost: float = 0.0
    # The outcome.
    verdict: Verdict = "VERDICT_UNSPECIFIED"
    # The limit state that governs.
    governing_limit_state_id: str = ""
    # Its utilization.
    governing_utilization: Optional[float] = None
    # The combination that governs.
    combination: str = ""
    # Grade or class of the rods' steel; empty without rods or where strengths were
    # given.
    rod_steel: str = ""
    # Place of the bottom plate.
    bottom_plate: int = 0
    # Place of the stack.
    stack: int = 0
    # Why the limit state that governs could not be verified or fails without numbers;
    # empty: by its numbers.
    reason: str = ""


@dataclass
class SizeStop:
    """SizeStop is what stops the next smaller value of a list."""

    # Which list.
    dimension: SizeDimension = "SIZE_DIMENSION_UNSPECIFIED"
    # Index of the smaller value in it, counted from 0.
    index: int = 0
    # The limit state that it does not satisfy: that which fails, else that which is out
    # of scope, else that which is used too much; empty: it passes but costs more.
    limit_state_id: str = ""
    # Utilization there.
    utilization: Optional[float] = None
    # Why that limit state could not be verified or fails without numbers; empty: by its
    # numbers.
    reason: str = ""


@dataclass
class SizeColumnBaseResponse:
    """SizeColumnBaseResponse answers SizeColumnBase."""

    # The caller's label, unchanged.
    label: str = ""
    # Whether any choice passes.
    found: bool = False
    # The cheapest that passes; when none does, the closest miss.
    best: Optional[SizeChoice] = None
    # The next cheapest that passes, if any.
    next_best: Optional[SizeChoice] = None
    # For the best, what stops the next smaller value of each list.
    stops: List[SizeStop] = field(default_factory=list)
    # Choices offered in all.
    choices: int = 0
    # Choices that were checked; the others follow from them.
    checked: int = 0
    # Notices of the best choice.
    notices: List[Notice] = field(default_factory=list)
    # What produced the answer.
    provenance: Optional[Provenance] = None


@dataclass
class ItemFigure:
    """ItemFigure is a rate times a quantity."""

    # The figure; absent: not known, for the reason.
    value: Optional[float] = None
    # The rate.
    rate: float = 0.0
    # What it counts by.
    per: RateMeasure = "RATE_MEASURE_UNSPECIFIED"
    # Where the rate comes from.
    source: str = ""
    # Whether the rate stands in for one that was not given.
    by_default: bool = False
    # Why the figure is not known.
    reason: str = ""


@dataclass
class ItemRow:
    """ItemRow is an item with what it takes."""

    # Kind.
    kind: ItemKind = "ITEM_KIND_UNSPECIFIED"
    # Its name.
    name: str = ""
    # Mass [kg]; 0: not counted by mass.
    mass_kg: float = 0.0
    # Volume in place [m3]; 0: not counted by volume.
    volume_m3: float = 0.0
    # Loose volume, as delivered or dug [m3]; 0: not known.
    loose_volume_m3: float = 0.0
    # Area [m2]; 0: not counted by area.
    area_m2: float = 0.0
    # Pieces; 0: not counted by pieces.
    count: int = 0
    # Money.
    cost: Optional[ItemFigure] = None
    # Labour [hours].
    hours: Optional[ItemFigure] = None
    # Carbon, A1 to A3 [kg CO2e].
    carbon: Optional[ItemFigure] = None
    # Money of transport; absent: nothing is carried.
    transport_cost: Optional[ItemFigure] = None
    # Carbon of transport, A4 [kg CO2e]; absent: nothing is carried.
    transport_carbon: Optional[ItemFigure] = None


@dataclass
class PartialSum:
    """PartialSum is a total with what it lacks."""

    # Of the rows that are known.
    value: float = 0.0
    # Names of the rows that are missing; none: the total is whole.
    missing: List[str] = field(default_factory=list)


@dataclass
class FootingTotals:
    """FootingTotals are the totals of one footing."""

    # Materials brought to the site [kg].
    mass_kg: Optional[PartialSum] = None
    # Concrete, blinding, fill and levelling layer in place [m3].
    volume_m3: Optional[PartialSum] = None
    # Dug, in place [m3].
    dug_m3: float = 0.0
    # Money, without transport.
    cost: Optional[PartialSum] = None
    # Labour [hours].
    hours: Optional[PartialSum] = None
    # Carbon of materials and formwork, A1 to A3, and of work on site where its rate was
    # given [kg CO2e].
    carbon: Optional[PartialSum] = None
    # Money of transport.
    transport_cost: Optional[PartialSum] = None
    # Carbon of transport, A4 [kg CO2e].
    transport_carbon: Optional[PartialSum] = None


@dataclass
class FootingCount:
    """FootingCount is one footing: whether it holds and what it takes."""

    # Its name.
    name: str = ""
    # How it was checked, limit state by limit state.
    result: Optional[CheckResult] = None
    # What it is made of.
    rows: List[ItemRow] = field(default_factory=list)
    # Totals.
    totals: Optional[FootingTotals] = None


@dataclass
class Contrast:
    """Contrast is one total against another."""

    # The second less the first; absent: a total is partial.
    difference: Optional[float] = None
    # The second over the first; absent: a total is partial, or the first is 0.
    ratio: Optional[float] = None


@dataclass
class FootingContrast:
    """FootingContrast are the pad's totals against those of the ring footing."""

    # Why nothing is compared: a footing does not hold. Empty: totals are compared.
    reason: str = ""
    # Materials brought to the site.
    mass: Optional[Contrast] = None
    # Concrete, blinding, fill and levelling layer.
    volume: Optional[Contrast] = None
    # Money.
    cost: Optional[Contrast] = None
    # Labour.
    hours: Optional[Contrast] = None
    # Carbon, A1 to A3.
    carbon: Optional[Contrast] = None
    # Money of transport.
    transport_cost: Optional[Contrast] = None
    # Carbon of transport, A4.
    transport_carbon: Optional[Contrast] = None


@dataclass
class PadBars:
    """PadBars are equal bars at the underside of a pad, the same both ways."""

    # Diameter [mm]. Required. 4 to 60.
    diameter_mm: float = 0.0
    # Between centres [mm]. Required. 20 to 1000.
    spacing_mm: float = 0.0


@dataclass
class PadStop:
    """PadStop is what stops a smaller pad."""

    # What is smaller.
    dimension: PadDimension = "PAD_DIMENSION_UNSPECIFIED"
    # The limit state that it does not satisfy.
    limit_state_id: str = ""
    # Its utilization there.
    utilization: Optional[float] = None


@dataclass
class PadChoice:
    """PadChoice is a pad that was sized."""

    # Whether it holds; else it is the closest miss.
    found: bool = False
    # Size along x [mm].
    size_x_mm: float = 0.0
    # Size along y [mm].
    size_y_mm: float = 0.0
    # Thickness [mm].
    thickness_mm: float = 0.0
    # Bars both ways; absent: plain concrete.
    bars: Optional[PadBars] = None
    # What stops the next smaller pads.
    stops: List[PadStop] = field(default_factory=list)
    # Pads that might have been chosen.
    choices: int = 0
    # Pads that were checked.
    checked: int = 0


@dataclass
class CompareFootingsResponse:
    """CompareFootingsResponse answers CompareFootings."""

    # The caller's label, unchanged.
    label: str = ""
    # The ring footing, then the concrete pad.
    footings: List[FootingCount] = field(default_factory=list)
    # The pad's totals against those of the ring footing.
    contrast: Optional[FootingContrast] = None
    # The pad that was sized; the closest miss where none passes.
    pad: Optional[PadChoice] = None
    # Assumptions, cautions and what is left out, of the comparison; those of the
    # checks stand with their results.
    notices: List[Notice] = field(default_factory=list)
    # What produced the answer.
    provenance: Optional[Provenance] = None


@dataclass
class Extreme:
    """Extreme is the greatest and the least of one component."""

    # The component.
    component: ForceComponent = "FORCE_COMPONENT_UNSPECIFIED"
    # Place of the combination with the greatest value in the answer, counted
    # from 0; of equals, the first.
    greatest: int = 0
    # Place of the combination with the least value.
    least: int = 0


@dataclass
class Envelope:
    """Envelope holds the extremes of the combinations of one kind."""

    # Of which combinations.
    kind: CombinationKind = "COMBINATION_KIND_UNSPECIFIED"
    # The extremes of the six components, in their order.
    extremes: List[Extreme] = field(default_factory=list)


@dataclass
class CombineActionsResponse:
    """CombineActionsResponse answers CombineActions."""

    # The caller's label, unchanged.
    label: str = ""
    # The basis by which the actions were combined.
    basis: Basis = "BASIS_UNSPECIFIED"
    # Edition of its standards, by name.
    edition: str = ""
    # National annex by which they were combined; empty: the recommended values.
    annex: str = ""
    # The combinations, by kind and stage.
    combinations: List[Combination] = field(default_factory=list)
    # The envelope of each kind, all stages together.
    envelopes: List[Envelope] = field(default_factory=list)
    # Assumptions and cautions.
    notices: List[Notice] = field(default_factory=list)
    # The factors used, each with its source.
    factors: List[FactorUsed] = field(default_factory=list)
    # What produced the answer.
    provenance: Optional[Provenance] = None


@dataclass
class TestValue:
    """TestValue is a value that tests give, or the reason why they do not."""

    # The value [kN]. Absent: there is none.
    value_kn: Optional[float] = None
    # Why there is none; else empty.
    reason: str = ""


@dataclass
class SurvivorBound:
    """SurvivorBound is what loads that were borne show without any law of strength."""

    # Load that every test bore [kN].
    load_kn: float = 0.0
    # Share of the population that bears it at the confidence asked.
    share: float = 0.0
    # Tests without failure by which it would be a 5 % fractile at that confidence.
    tests_needed: int = 0
    # X_k by the bound of the median, log-normal, V known [kN]. Absent unless no test
    # failed by the mode.
    characteristic_kn: Optional[float] = None


@dataclass
class CorrelatedValue:
    """CorrelatedValue is what EN 1997-1 7.6.2.2(8) comes to."""

    # xi_1 used.
    xi_mean: float = 0.0
    # xi_2 used.
    xi_least: float = 0.0
    # R_k [kN]. Absent where the tests are not one population.
    characteristic_kn: Optional[float] = None
    # R_k / gamma_t [kN]. Absent without a partial factor.
    design_kn: Optional[float] = None


@dataclass
class FamilyValue:
    """FamilyValue is what EN 1990 D8 comes to."""

    # b, mean of tested over predicted.
    bias: float = 0.0
    # V_delta of the model's error, as used.
    error_variation: float = 0.0
    # V_r of the resistance.
    variation: float = 0.0
    # r_k over predicted. Absent where the sizes are not to be pooled.
    characteristic_ratio: Optional[float] = None
    # r_d over predicted. Absent likewise, and below 4 tests.
    design_ratio: Optional[float] = None


@dataclass
class AssessLoadTestsResponse:
    """AssessLoadTestsResponse answers AssessLoadTests."""

    # The caller's label, unchanged.
    label: str = ""
    # Tests that failed by the mode.
    failed: int = 0
    # Tests that did not: stopped, or ended by another mode.
    survived: int = 0
    # Whether no test failed by the mode: every value is then a lower bound only.
    lower_bound_only: bool = False
    # How the characteristic value was found.
    route: TestRoute = "TEST_ROUTE_UNSPECIFIED"
    # Mean of the loads at failure [kN]. Absent where a test did not fail by the mode.
    mean_kn: Optional[float] = None
    # Coefficient of variation of the sample. Absent likewise, and of one test.
    variation: Optional[float] = None
    # The coefficient of variation used. Absent where none was.
    variation_used: Optional[float] = None
    # k_n. Absent where there is none.
    factor: Optional[float] = None
    # X_k, normal [kN]. Absent where there is none above 0.
    normal_kn: Optional[float] = None
    # X_k, log-normal [kN]. Absent where there is none.
    log_normal_kn: Optional[float] = None
    # The characteristic value that stands: 5 % fractile [kN].
    characteristic: Optional[TestValue] = None
    # Design value by EN 1990 D7.2: eta_d X_k / gamma_M.
    design: Optional[TestValue] = None
    # Design value by EN 1990 D7.3, log-normal; no gamma_M goes with it.
    direct: Optional[TestValue] = None
    # X_k with the tests that were left out [kN]. Absent where none was left out.
    with_all_kn: Optional[float] = None
    # What loads without failure show by themselves.
    survivors: Optional[SurvivorBound] = None
    # EN 1997-1 7.6.2.2(8), beside. Absent for a family of sizes.
    correlation: Optional[CorrelatedValue] = None
    # Allowable load by IBC 1709.3.1, a total factor of 2.5 on the least.
    allowable: Optional[TestValue] = None
    # phi R, on the mean.
    phi_mean: Optional[TestValue] = None
    # phi. Absent where there is none.
    phi: Optional[float] = None
    # The model of a family of sizes. Absent without family.
    family: Optional[FamilyValue] = None
    # Assumptions, cautions and limits of validity. At DETAIL_GOVERNING without text.
    notices: List[Notice] = field(default_factory=list)
    # Factors used; empty at DETAIL_GOVERNING.
    factors: List[FactorUsed] = field(default_factory=list)
    # The calculation step by step; only at DETAIL_DERIVATION.
    derivation: List[DerivationStep] = field(default_factory=list)
    # What produced the answer.
    provenance: Optional[Provenance] = None


@dataclass
class CriterionReading:
    """CriterionReading is one criterion held against the record."""

    # The criterion.
    criterion: FailureCriterion = "FAILURE_CRITERION_UNSPECIFIED"
    # Load at which it was met [kN]. Absent: it was not.
    load_kn: Optional[float] = None
    # Why it was not met or could not be judged; of damage what was seen; else empty.
    reason: str = ""


@dataclass
class StageReading:
    """StageReading is what one stage came to."""

    # Load [kN].
    load_kn: float = 0.0
    # Mean settlement at the last reading [mm].
    settlement_mm: float = 0.0
    # Greatest settlement of a gauge then [mm].
    edge_mm: float = 0.0
    # Slope of the plane through the gauges [rad]. Absent without their radius.
    tilt: Optional[float] = None


@dataclass
class TestModulus:
    """TestModulus is the modulus of one cycle of loading."""

    # E_v = 1.5 r/(a_1 + a_2 sigma_max) [MPa] (DIN 18134, from memory). Absent: none.
    e_v_mpa: Optional[float] = None
    # E_PLT on the same secant [MPa] (EN 1997-2 K.2, from memory). Absent: none.
    e_plt_mpa: Optional[float] = None
    # Why there is none; else empty.
    reason: str = ""


@dataclass
class SubgradeReaction:
    """SubgradeReaction is pressure over settlement, and what it is below the footing."""

    # k_s of the plate [N/mm3]. Absent: not read.
    plate_n_mm3: Optional[float] = None
    # Settlement of the footing over that of the plate at the same pressure. Absent: not
    # asked.
    scale: Optional[float] = None
    # k_s of the footing [N/mm3]. Absent: not asked.
    footing_n_mm3: Optional[float] = None
    # Whether the footing is more than three times as wide as the plate: a bound only.
    bound_only: bool = False
    # Why it was not read; else empty.
    reason: str = ""


@dataclass
class HoldingCreep:
    """HoldingCreep is the creep of one hold."""

    # Stage, counted from 1.
    stage: int = 0
    # Settlement a cycle of log10 t [mm]. Absent: not read.
    alpha_mm: Optional[float] = None
    # Its standard error [mm]. Absent likewise.
    error_mm: Optional[float] = None
    # Whether there is no measurable creep: the 95 % bound was used.
    none_measurable: bool = False
    # alpha used [mm]. Absent likewise.
    used_mm: Optional[float] = None
    # Settlement at the design life under this load [mm]. Absent: no life asked.
    life_mm: Optional[float] = None
    # Why there is no alpha; else empty.
    reason: str = ""


@dataclass
class TestHyperbola:
    """TestHyperbola is s/P = c_2 + c_1 s (Kondner 1963, Chin 1970, from memory)."""

    # Load that it runs to [kN]: no resistance. Absent: not to be used.
    ultimate_kn: Optional[float] = None
    # Standard error of it [kN]; says nothing of a wrong law.
    error_kn: Optional[float] = None
    # Initial stiffness [kN/mm].
    initial_kn_mm: Optional[float] = None
    # Extrapolated load: least of that at a tenth of the width and 1.25 of the greatest
    # held [kN].
    extrapolated_kn: Optional[float] = None
    # Why it is not to be used; else empty.
    reason: str = ""


@dataclass
class ClampReading:
    """ClampReading is what the clamping rods do."""

    # Load at which the rods go slack [kN]. Absent without clamp.
    slack_load_kn: Optional[float] = None
    # Preload that embedment takes [kN]. Absent without clamp.
    preload_lost_kn: Optional[float] = None
    # Load at which the rods go slack with what embedment leaves [kN]. Absent without
    # clamp.
    slack_load_left_kn: Optional[float] = None
    # Preload at the design life by its record [kN]. Absent: not read.
    preload_at_life_kn: Optional[float] = None
    # Its one-sided 95 % bound [kN]. Absent: not read.
    preload_at_life_least_kn: Optional[float] = None
    # Load at which the rods go slack with that bound [kN]. Absent: not read.
    slack_load_at_life_kn: Optional[float] = None
    # Why the record of the preload was not read; else empty.
    reason: str = ""


@dataclass
class ReadLoadTestResponse:
    """ReadLoadTestResponse answers ReadLoadTest."""

    # The caller's label, unchanged.
    label: str = ""
    # Whether a criterion of failure was met.
    failed: bool = False
    # The criterion that governs: the least load. UNSPECIFIED: none was met.
    governing: FailureCriterion = "FAILURE_CRITERION_UNSPECIFIED"
    # Load at failure; where none was met the greatest load held, a lower bound [kN].
    resistance_kn: float = 0.0
    # Every criterion in its fixed order.
    criteria: List[CriterionReading] = field(default_factory=list)
    # What each stage came to, in the order of the request.
    stages: List[StageReading] = field(default_factory=list)
    # First stage, counted from 1, from which on the record was not used. 0: all was.
    unusable_from: int = 0
    # Modulus of the first loading.
    first_loading: Optional[TestModulus] = None
    # Modulus of the reload.
    reload: Optional[TestModulus] = None
    # Subgrade reaction.
    subgrade: Optional[SubgradeReaction] = None
    # Creep of every hold of the first loading.
    creep: List[HoldingCreep] = field(default_factory=list)
    # Hyperbola through the first loading: extrapolated, no result of the test.
    hyperbola: Optional[TestHyperbola] = None
    # What the clamping does. Absent without clamp and preload record.
    clamp: Optional[ClampReading] = None
    # Assumptions, cautions and limits of validity. At DETAIL_GOVERNING without text.
    notices: List[Notice] = field(default_factory=list)
    # The calculation step by step; only at DETAIL_DERIVATION.
    derivation: List[DerivationStep] = field(default_factory=list)
    # What produced the answer.
    provenance: Optional[Provenance] = None


@dataclass
class BasisEntry:
    """BasisEntry is a design basis."""

    # The basis.
    basis: Basis = "BASIS_UNSPECIFIED"
    # Name of the edition by which checks are made, as a request may name it.
    edition: str = ""
    # Its standards with their editions.
    standards: List[str] = field(default_factory=list)
    # National annexes that a request may name.
    annexes: List[str] = field(default_factory=list)
    # Factors with their default values and clauses.
    factors: List[FactorUsed] = field(default_factory=list)


@dataclass
class ListDesignBasesResponse:
    """ListDesignBasesResponse lists the design bases."""

    # The bases.
    bases: List[BasisEntry] = field(default_factory=list)


@dataclass
class SteelBand:
    """SteelBand gives the strengths up to a thickness."""

    # Greatest thickness of the band, included [mm].
    up_to_thickness_mm: float = 0.0
    # Yield strength [MPa].
    fy_mpa: float = 0.0
    # Tensile strength [MPa].
    fu_mpa: float = 0.0


@dataclass
class SteelEntry:
    """SteelEntry is a steel grade."""

    # Designation, as a request names it.
    grade: str = ""
    # Strengths by thickness, thinnest first.
    bands: List[SteelBand] = field(default_factory=list)
    # beta_w of EN 1993-1-8 Table 4.1; 0 where the table has none.
    beta_w: float = 0.0
    # Where the values come from.
    source: str = ""


@dataclass
class ListSteelsResponse:
    """ListSteelsResponse lists the steels."""

    # The steels.
    steels: List[SteelEntry] = field(default_factory=list)


@dataclass
class RodSteelEntry:
    """RodSteelEntry is a property class or grade of rods."""

    # Designation, as a request names it.
    grade: str = ""
    # Yield strength [MPa].
    fy_mpa: float = 0.0
    # Tensile strength [MPa].
    fu_mpa: float = 0.0
    # Greatest nominal diameter for these strengths, included [mm]; 0: any.
    up_to_diameter_mm: float = 0.0
    # Where the values come from.
    source: str = ""


@dataclass
class ListRodSteelsResponse:
    """ListRodSteelsResponse lists the rod steels."""

    # The rod steels.
    rod_steels: List[RodSteelEntry] = field(default_factory=list)


@dataclass
class ThreadEntry:
    """ThreadEntry is a thread."""

    # Designation, as a request names it.
    designation: str = ""
    # Nominal diameter [mm].
    diameter_mm: float = 0.0
    # Pitch [mm].
    pitch_mm: float = 0.0
    # Tensile stress area [mm2].
    stress_area_mm2: float = 0.0
    # Where the values come from.
    source: str = ""


@dataclass
class ListThreadsResponse:
    """ListThreadsResponse lists the threads."""

    # The threads, smallest first, metric before inch.
    threads: List[ThreadEntry] = field(default_factory=list)


@dataclass
class WeldMetalEntry:
    """WeldMetalEntry is a filler."""

    # Designation, as a request names it.
    grade: str = ""
    # Least tensile strength of the deposited metal [MPa].
    strength_mpa: float = 0.0
    # Where the value comes from.
    source: str = ""


@dataclass
class ListWeldMetalsResponse:
    """ListWeldMetalsResponse lists the fillers."""

    # The fillers.
    weld_metals: List[WeldMetalEntry] = field(default_factory=list)


@dataclass
class ConcreteEntry:
    """ConcreteEntry is a strength class of concrete."""

    # Designation, as a request names it.
    grade: str = ""
    # Cylinder strength [MPa]: f_ck or f'c.
    strength_mpa: float = 0.0
    # Where the value comes from.
    source: str = ""


@dataclass
class ListConcretesResponse:
    """ListConcretesResponse lists the concretes."""

    # The concretes.
    concretes: List[ConcreteEntry] = field(default_factory=list)


@dataclass
class TimberEntry:
    """TimberEntry is a strength class or grade of timber."""

    # Designation, as a request names it.
    grade: str = ""
    # Compression along the grain [MPa]: f_c,0,k or F_c.
    compression_along_mpa: float = 0.0
    # Compression across the grain [MPa]: f_c,90,k or F_c-perp.
    compression_across_mpa: float = 0.0
    # What it is made of.
    kind: TimberKind = "TIMBER_KIND_UNSPECIFIED"
    # The basis family whose values these are: BASIS_EUROCODE for characteristic
    # values, BASIS_US_ASD for reference design values (used by LRFD too).
    basis: Basis = "BASIS_UNSPECIFIED"
    # Where the values come from.
    source: str = ""


@dataclass
class ListTimbersResponse:
    """ListTimbersResponse lists the timbers."""

    # The timbers.
    timbers: List[TimberEntry] = field(default_factory=list)


@dataclass
class UnitWeightEntry:
    """UnitWeightEntry is the nominal unit weight of a material."""

    # What it is.
    material: str = ""
    # Least mean value [kN/m3]: for what holds down.
    min_kn_m3: float = 0.0
    # Greatest mean value [kN/m3]: for what presses; equal to the least where the
    # source has one value.
    max_kn_m3: float = 0.0
    # Where the values come from.
    source: str = ""


@dataclass
class ListUnitWeightsResponse:
    """ListUnitWeightsResponse lists unit weights."""

    # The unit weights. Growing media are not among them: no standard gives them,
    # and they weigh far more wet than dry, so the supplier's values are needed for
    # both states.
    unit_weights: List[UnitWeightEntry] = field(default_factory=list)


@dataclass
class LimitStateClause:
    """LimitStateClause is where a basis sets a limit state."""

    # The basis.
    basis: Basis = "BASIS_UNSPECIFIED"
    # Standard and clause.
    clause: str = ""
    # How well the number is held by this basis' code family.
    evidence: Evidence = "EVIDENCE_UNSPECIFIED"


@dataclass
class LimitStateEntry:
    """LimitStateEntry is a limit state."""

    # The check it belongs to.
    check: CheckKind = "CHECK_KIND_UNSPECIFIED"
    # Stable name in snake case.
    id: str = ""
    # What it is, in words.
    title: str = ""
    # Unit of demand and resistance; empty without dimension.
    unit: str = ""
    # Bases that have it, with the clause of each.
    clauses: List[LimitStateClause] = field(default_factory=list)


@dataclass
class ListLimitStatesResponse:
    """ListLimitStatesResponse lists the limit states."""

    # The limit states, by check, in the order of an answer.
    limit_states: List[LimitStateEntry] = field(default_factory=list)


@dataclass
class NoticeEntry:
    """NoticeEntry is a notice."""

    # The check it belongs to; unspecified: the combination of actions.
    check: CheckKind = "CHECK_KIND_UNSPECIFIED"
    # Stable name in snake case.
    code: str = ""
    # How serious it is.
    severity: Severity = "SEVERITY_UNSPECIFIED"
    # The remark in words.
    text: str = ""


@dataclass
class ListNoticesResponse:
    """ListNoticesResponse lists the notices."""

    # The notices, by check.
    notices: List[NoticeEntry] = field(default_factory=list)
