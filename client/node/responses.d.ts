// Written from the contract by .ci/generate. Do not edit.
// The responses of the contract. Left out is what has no value, such as the
// utilization where there is no resistance.

/** Basis is the family of standards by which a check is made. */
export type Basis =
  /** Not stated: refused, there is no default basis. */
  | 'BASIS_UNSPECIFIED'
  /** EN 1990 to EN 1997 by partial factors. */
  | 'BASIS_EUROCODE'
  /** United States practice by load and resistance factors (AISC 360-22, NDS
   * 2018 LRFD). Actions are factored (required strengths by ASCE 7-22 2.3). */
  | 'BASIS_US_LRFD'
  /** United States practice by allowable strength (AISC 360-22, NDS 2018 ASD).
   * Actions are not factored (required strengths by ASCE 7-22 2.4). */
  | 'BASIS_US_ASD';

/** Verdict is the outcome of a limit state or of a whole check. */
export type Verdict =
  /** Never sent. */
  | 'VERDICT_UNSPECIFIED'
  /** The demand does not exceed the resistance. */
  | 'VERDICT_PASS'
  /** The demand exceeds the resistance. */
  | 'VERDICT_FAIL'
  /** There is nothing to check here; the reason says why. */
  | 'VERDICT_NOT_APPLICABLE'
  /** The chosen basis does not cover the case: an engineer must judge. The
   * reason says what is missing. */
  | 'VERDICT_OUT_OF_SCOPE';

/** SizeKind names the dimension that a required size is about. */
export type SizeKind =
  /** No required size is given. */
  | 'SIZE_KIND_UNSPECIFIED'
  /** Thickness of the plate, corrosion allowance included [mm]. */
  | 'SIZE_KIND_PLATE_THICKNESS'
  /** Throat of the weld, corrosion allowance included [mm]. */
  | 'SIZE_KIND_WELD_THROAT'
  /** Leg of the fillet weld, corrosion allowance included [mm]. */
  | 'SIZE_KIND_WELD_LEG'
  /** Length of the weld run [mm]. */
  | 'SIZE_KIND_WELD_LENGTH'
  /** Nominal diameter of the rod [mm]. */
  | 'SIZE_KIND_ROD_DIAMETER'
  /** Side of a square contact area that would do [mm]. */
  | 'SIZE_KIND_CONTACT_SIDE'
  /** Diameter of the hole [mm]. */
  | 'SIZE_KIND_HOLE_DIAMETER'
  /** Diameter of a pin; its holes grow with it [mm]. */
  | 'SIZE_KIND_PIN_DIAMETER'
  /** Size of the column along the pins [mm]. */
  | 'SIZE_KIND_COLUMN_THICKNESS'
  /** Spacing of the pins along the column [mm]. */
  | 'SIZE_KIND_PIN_SPACING_ALONG'
  /** Spacing of the rows of pins [mm]. */
  | 'SIZE_KIND_PIN_SPACING_ACROSS'
  /** Distance of the nearest pin to the end of the column [mm]. */
  | 'SIZE_KIND_PIN_END_DISTANCE'
  /** Distance of the nearest pin to the edge of the column [mm]. */
  | 'SIZE_KIND_PIN_EDGE_DISTANCE'
  /** Distance of the last pin to the free end of the plates of the shoe [mm]. */
  | 'SIZE_KIND_BRACKET_END_DISTANCE'
  /** Width of the plates of the shoe [mm]. */
  | 'SIZE_KIND_BRACKET_WIDTH'
  /** Thickness of a concrete pad [mm]. */
  | 'SIZE_KIND_PAD_THICKNESS'
  /** Area of bars per width [mm2/mm]. */
  | 'SIZE_KIND_STEEL_PER_WIDTH';

/** Evidence is how well the number of a limit state is held by something outside
 * this service. */
export type Evidence =
  /** Not known: an answer of a service before this field. */
  | 'EVIDENCE_UNSPECIFIED'
  /** Printed figures of a standard, handbook or worked example are reproduced, for
   * this code family. */
  | 'EVIDENCE_PRINTED'
  /** No printed figure was found: worked by hand from the clause, or computed in a
   * second way. */
  | 'EVIDENCE_WORKED'
  /** An engineering model outside the codes; what holds it is statics and the
   * second ways of the tests. Load tests or observation must stand beside it. */
  | 'EVIDENCE_MODEL';

/** Severity ranks notices. */
export type Severity =
  /** Never sent. */
  | 'SEVERITY_UNSPECIFIED'
  /** For information: a choice that the calculation made. */
  | 'SEVERITY_INFO'
  /** An assumption that the designer must confirm. */
  | 'SEVERITY_ASSUMPTION'
  /** A caution: a limit of the method or something that was not checked. */
  | 'SEVERITY_CAUTION';

/** CombinationKind is what a combination is for. */
export type CombinationKind =
  /** Never sent; refused. */
  | 'COMBINATION_KIND_UNSPECIFIED'
  /** Strength: EN 1990 (6.10), set B of Table A1.2; ASCE 7-22 2.3.1 (LRFD), 2.4.1
   * (ASD). */
  | 'COMBINATION_KIND_STRENGTH'
  /** Strength by EN 1990 (6.10a) and (6.10b). Eurocode only. */
  | 'COMBINATION_KIND_STRENGTH_AB'
  /** Ground: EN 1990 (6.10), set C of Table A1.2. Eurocode only. */
  | 'COMBINATION_KIND_GROUND'
  /** Static equilibrium: EN 1990 (6.10), set A of Table A1.2. Eurocode only. */
  | 'COMBINATION_KIND_EQUILIBRIUM'
  /** Accidental: EN 1990 (6.11b). Eurocode only. */
  | 'COMBINATION_KIND_ACCIDENTAL'
  /** Characteristic: EN 1990 (6.14b). Eurocode; in load cases of US LRFD service values,
   * combined by ASCE 7-22 2.4.1. */
  | 'COMBINATION_KIND_CHARACTERISTIC'
  /** Frequent: EN 1990 (6.15b). Eurocode only. */
  | 'COMBINATION_KIND_FREQUENT'
  /** Quasi-permanent: EN 1990 (6.16b). Eurocode only. */
  | 'COMBINATION_KIND_QUASI_PERMANENT'
  /** Factored beside service values: ASCE 7-22 2.3.1, by which ACI 318 checks the concrete
   * of a pad. In load cases of US ASD only. */
  | 'COMBINATION_KIND_FACTORED';

/** LoadDuration is the duration class of EN 1995-1-1 Table 2.1 of the shortest
 * action in the combination. */
export type LoadDuration =
  /** Not stated: treated as permanent, the most cautious, and a notice says so. */
  | 'LOAD_DURATION_UNSPECIFIED'
  /** More than ten years. */
  | 'LOAD_DURATION_PERMANENT'
  /** Six months to ten years. */
  | 'LOAD_DURATION_LONG_TERM'
  /** A week to six months. */
  | 'LOAD_DURATION_MEDIUM_TERM'
  /** Less than a week. */
  | 'LOAD_DURATION_SHORT_TERM'
  /** Instantaneous. */
  | 'LOAD_DURATION_INSTANTANEOUS';

/** FieldReason is the kind of fault of a refused field. */
export type FieldReason =
  /** Never sent. */
  | 'FIELD_REASON_UNSPECIFIED'
  /** The field is required and missing. */
  | 'FIELD_REASON_MISSING'
  /** The value is outside its allowed range, or not a finite number. */
  | 'FIELD_REASON_OUT_OF_RANGE'
  /** An enum value, name or text that is not known. */
  | 'FIELD_REASON_UNKNOWN_VALUE'
  /** Two fields exclude each other. */
  | 'FIELD_REASON_CONFLICT'
  /** The fields do not fit together as a body in space. */
  | 'FIELD_REASON_GEOMETRY'
  /** Too many or too few elements, or a text too long. */
  | 'FIELD_REASON_COUNT';

/** SizeDimension is what is chosen. */
export type SizeDimension =
  /** Never sent. */
  | 'SIZE_DIMENSION_UNSPECIFIED'
  /** Plan of the plate. */
  | 'SIZE_DIMENSION_PLAN'
  /** Thickness of the plate. */
  | 'SIZE_DIMENSION_THICKNESS'
  /** Rods. */
  | 'SIZE_DIMENSION_ROD'
  /** Throat of the weld. */
  | 'SIZE_DIMENSION_THROAT'
  /** Bottom plate. */
  | 'SIZE_DIMENSION_BOTTOM_PLATE'
  /** Stack of rings. */
  | 'SIZE_DIMENSION_STACK';

/** ItemKind is what an item is, which its rate goes by. */
export type ItemKind =
  /** Never sent; refused. */
  | 'ITEM_KIND_UNSPECIFIED'
  /** Steel plate. */
  | 'ITEM_KIND_STEEL_PLATE'
  /** Steel rods. */
  | 'ITEM_KIND_STEEL_ROD'
  /** Weld metal. */
  | 'ITEM_KIND_WELD_METAL'
  /** Reinforcement. */
  | 'ITEM_KIND_REINFORCEMENT'
  /** Concrete. */
  | 'ITEM_KIND_CONCRETE'
  /** Blinding. */
  | 'ITEM_KIND_BLINDING'
  /** Granular fill, compacted. */
  | 'ITEM_KIND_FILL'
  /** Levelling layer. */
  | 'ITEM_KIND_LEVELLING'
  /** New rings. */
  | 'ITEM_KIND_NEW_RING'
  /** Reused rings. */
  | 'ITEM_KIND_REUSED_RING'
  /** Geotextile. */
  | 'ITEM_KIND_GEOTEXTILE'
  /** Formwork. */
  | 'ITEM_KIND_FORMWORK'
  /** Excavation. */
  | 'ITEM_KIND_EXCAVATION'
  /** Soil of the excavation, put back. */
  | 'ITEM_KIND_BACKFILL'
  /** Soil of the excavation that is left over. */
  | 'ITEM_KIND_SURPLUS';

/** RateMeasure is what a rate counts by. */
export type RateMeasure =
  /** Not stated: refused, but with transport, which counts by tonne and kilometre. */
  | 'RATE_MEASURE_UNSPECIFIED'
  /** kg. */
  | 'RATE_MEASURE_KG'
  /** m3 in place. */
  | 'RATE_MEASURE_M3'
  /** m3 loose, as delivered or dug. */
  | 'RATE_MEASURE_LOOSE_M3'
  /** m2. */
  | 'RATE_MEASURE_M2'
  /** Piece. */
  | 'RATE_MEASURE_PIECE';

/** PadDimension is what of a pad is smaller. */
export type PadDimension =
  /** Never sent. */
  | 'PAD_DIMENSION_UNSPECIFIED'
  /** Plan. */
  | 'PAD_DIMENSION_PLAN'
  /** Thickness. */
  | 'PAD_DIMENSION_THICKNESS'
  /** Bars. */
  | 'PAD_DIMENSION_BARS';

/** ForceComponent is one of the six forces at the foot. */
export type ForceComponent =
  /** Never sent. */
  | 'FORCE_COMPONENT_UNSPECIFIED'
  /** N. */
  | 'FORCE_COMPONENT_N'
  /** V_x. */
  | 'FORCE_COMPONENT_V_X'
  /** V_y. */
  | 'FORCE_COMPONENT_V_Y'
  /** M_x. */
  | 'FORCE_COMPONENT_M_X'
  /** M_y. */
  | 'FORCE_COMPONENT_M_Y'
  /** T. */
  | 'FORCE_COMPONENT_T';

/** TestRoute is how a characteristic value was found. */
export type TestRoute =
  /** It was not found. */
  | 'TEST_ROUTE_UNSPECIFIED'
  /** EN 1990 D7: every test failed by the mode. */
  | 'TEST_ROUTE_ANNEX_D'
  /** Likelihood, log-normal, V known: some tests did not fail by the mode. */
  | 'TEST_ROUTE_LIKELIHOOD'
  /** No test failed by the mode: loads held count as failures, V known. A lower bound. */
  | 'TEST_ROUTE_SURVIVORS'
  /** EN 1990 D8: sizes of a family. */
  | 'TEST_ROUTE_FAMILY';

/** FailureCriterion is a way to call a loaded footing failed. */
export type FailureCriterion =
  /** None. */
  | 'FAILURE_CRITERION_UNSPECIFIED'
  /** A load could not be held; the greatest held before counts. */
  | 'FAILURE_CRITERION_PLUNGE'
  /** Settlement of a tenth of the width (EN 1997-2, from memory). */
  | 'FAILURE_CRITERION_TENTH_OF_WIDTH'
  /** Where the initial and the final line meet. */
  | 'FAILURE_CRITERION_TANGENTS'
  /** Where creep breaks upward and doubles. */
  | 'FAILURE_CRITERION_CREEP'
  /** Damage that was seen; the greatest load before counts. */
  | 'FAILURE_CRITERION_DAMAGE';

/** TimberKind is what a timber is made of. */
export type TimberKind =
  /** Not stated: refused where properties are given. */
  | 'TIMBER_KIND_UNSPECIFIED'
  /** Solid timber, softwood. */
  | 'TIMBER_KIND_SOLID_SOFTWOOD'
  /** Glued laminated timber, softwood. */
  | 'TIMBER_KIND_GLUED_LAMINATED'
  /** Solid timber, hardwood. */
  | 'TIMBER_KIND_SOLID_HARDWOOD';

/** CheckKind names a check. */
export type CheckKind =
  /** Of no check. */
  | 'CHECK_KIND_UNSPECIFIED'
  /** CheckBearing. */
  | 'CHECK_KIND_BEARING'
  /** CheckPlateBending. */
  | 'CHECK_KIND_PLATE_BENDING'
  /** CheckWeld. */
  | 'CHECK_KIND_WELD'
  /** CheckAnchorRods. */
  | 'CHECK_KIND_ANCHOR_RODS'
  /** CheckColumnBase; its own limit states, besides those of the parts. */
  | 'CHECK_KIND_COLUMN_BASE'
  /** CheckService.CheckAnchorage. */
  | 'CHECK_KIND_ANCHORAGE'
  /** CheckService.CheckPin. */
  | 'CHECK_KIND_PIN'
  /** CheckService.CheckSettlement. */
  | 'CHECK_KIND_SETTLEMENT'
  /** CheckService.CheckFooting. */
  | 'CHECK_KIND_FOOTING'
  /** CheckService.CheckRingStack. */
  | 'CHECK_KIND_RING_STACK'
  /** Concrete pad, as CompareService sizes it. */
  | 'CHECK_KIND_CONCRETE_PAD';

/** RequiredSize is the least size by which a limit state holds. */
export interface RequiredSize {
  /** What it is the size of. */
  kind: SizeKind;
  /** The size, in the unit below. */
  value: number;
  /** mm, or mm2/mm for bars per width. */
  unit: string;
}

/** LimitState is one way in which the part can fail, checked. */
export interface LimitState {
  /** Stable name in snake case, such as rod_tension; CatalogService lists all. */
  id: string;
  /** What it is, in words. */
  title: string;
  /** Standard and clause of the resistance. */
  clause: string;
  /** Demand, in the unit below; never negative. */
  demand: number;
  /** Design (LRFD, Eurocode) or allowable (ASD) resistance, in the unit below.
   * Absent where there is no resistance. */
  resistance?: number;
  /** Unit of demand and resistance: kN, kNm, kN/m, kNm/m, MPa, mm, or empty. */
  unit: string;
  /** Demand over resistance. Absent where there is no resistance. */
  utilization?: number;
  /** The outcome. */
  verdict: Verdict;
  /** Why, for NOT_APPLICABLE and OUT_OF_SCOPE, and for FAIL where the numbers
   * alone do not say it. */
  reason: string;
  /** Least size that would satisfy this limit state, all else unchanged. Absent where the
   * equation cannot be inverted. */
  required_size?: RequiredSize;
  /** The rod, weld segment or joined part that governs, counted from 1 in the
   * order of the request. 0 where the limit state is about the whole. */
  member: number;
  /** Of a column base: the combination that is worst for this limit state. */
  combination: string;
  /** Of a column base: the stage of that combination, counted from 1. */
  stage: number;
  /** How well the number is held; footward evidence prints every held figure. */
  evidence: Evidence;
  /** Of a column base: place of that combination in combinations, counted from 0. Absent
   * where no single combination is meant. */
  combination_index?: number;
  /** Of a column base: the stage of that combination, counted from 0. Absent: none. */
  stage_index?: number;
}

/** Notice is a remark that the designer must read. */
export interface Notice {
  /** Stable name in snake case; CatalogService lists all. */
  code: string;
  /** How serious it is. */
  severity: Severity;
  /** The remark in words; empty at DETAIL_GOVERNING. */
  text: string;
}

/** FactorUsed is one partial or resistance factor and the value used. */
export interface FactorUsed {
  /** The standard's symbol, such as gamma_M2 or phi. */
  symbol: string;
  /** The value used. */
  value: number;
  /** Where the value comes from: the clause, or "given in the request". */
  source: string;
}

/** DerivationStep is one line of the calculation, to be followed with a pencil.
 * All steps use N, mm and MPa, so that the numbers can be put in as they are. */
export interface DerivationStep {
  /** Symbol of the quantity, such as f_jd. */
  symbol: string;
  /** The formula in plain characters; a blank between two factors multiplies. */
  expression: string;
  /** The same formula with the numbers put in. */
  numbers: string;
  /** The value, in the unit below. */
  value: number;
  /** N, mm, mm2, mm3, mm4, MPa, Nmm, N/mm, rad; empty without dimension. */
  unit: string;
  /** Standard and clause, or where else the step comes from. */
  clause: string;
}

/** CombinationTerm is one action in a combination. */
export interface CombinationTerm {
  /** Place of the action in the request, counted from 0. */
  action: number;
  /** What it is multiplied by. */
  factor: number;
}

/** ForcesAtFoot are the actions of the column on its base at the plate's upper
 * face, on the plate's centre. Signs: see the drawing at the top of this file.
 * Design values for Eurocode and LRFD, unfactored combinations for ASD. */
export interface ForcesAtFoot {
  /** Axial force [kN]: positive pulls up (tension), negative presses down
   * (compression). Default 0. -100 000 to 100 000. */
  n_kn: number;
  /** Shear along x [kN], positive towards +x. Default 0. -100 000 to 100 000. */
  v_x_kn: number;
  /** Shear along y [kN], positive towards +y. Default 0. -100 000 to 100 000. */
  v_y_kn: number;
  /** Moment about x [kNm]: positive presses the -y side. Default 0.
   * -100 000 to 100 000. */
  m_x_knm: number;
  /** Moment about y [kNm]: positive presses the +x side. Default 0.
   * -100 000 to 100 000. */
  m_y_knm: number;
  /** Torsion about z [kNm]: positive counter-clockwise from above. Default 0.
   * -100 000 to 100 000. */
  t_knm: number;
}

/** Combination is one combination of actions. */
export interface Combination {
  /** Its name as the standard writes it, such as "EN 1990 (6.10): 1.35 frame +
   * 1.5 snow + 0.9 wind". */
  name: string;
  /** What it is for. */
  kind: CombinationKind;
  /** Stage, counted from 1. */
  stage: number;
  /** The actions in it; those that are left out act favourably or cannot act. */
  terms: CombinationTerm[];
  /** The sum at the foot. */
  forces?: ForcesAtFoot;
  /** How long it lasts, for timber; Eurocode. */
  load_duration: LoadDuration;
  /** C_D of NDS for timber; US ASD. [-] */
  load_duration_factor?: number;
  /** lambda of NDS for timber; US LRFD. [-] */
  time_effect_factor?: number;
}

/** PlanPoint is a point in the plan of a plate, from its centre. */
export interface PlanPoint {
  /** Along x [mm]. */
  x_mm: number;
  /** Along y [mm]. */
  y_mm: number;
}

/** ContactState is where a plate presses on what is below it under one combination:
 * that of the bed and the rods as they are given. Pressures and tensions that are
 * checked may be greater, since rods may be stiffer or tighter than that. */
export interface ContactState {
  /** Area pressed [mm2]. */
  area_mm2: number;
  /** Corners of the pressed zone in their order; empty: nothing is pressed. */
  outline: PlanPoint[];
  /** Direction in which the pressure rises, counter-clockwise from x [deg]. -180 to 180.
   * Absent: the pressure is the same everywhere. */
  neutral_axis_deg?: number;
  /** From the centre of the plate to the line where the pressure begins, along that
   * direction [mm]: negative where the centre is pressed. Absent: no such line. */
  neutral_axis_offset_mm?: number;
  /** Greatest pressure [MPa]. */
  peak_pressure_mpa: number;
  /** Where it is: that of equal ones which comes first in the outline. Absent: nothing is
   * pressed. */
  peak?: PlanPoint;
}

/** RodForce is the action on one rod. */
export interface RodForce {
  /** Tension [kN]; a rod in compression is out of scope. Default 0. 0 to
   * 100 000. */
  tension_kn: number;
  /** Shear along x [kN]. Default 0. -100 000 to 100 000. */
  shear_x_kn: number;
  /** Shear along y [kN]. Default 0. -100 000 to 100 000. */
  shear_y_kn: number;
}

/** CombinationRow is what a base does under one combination. */
export interface CombinationRow {
  /** Its name. */
  combination: string;
  /** Its stage, counted from 1; 0: none. */
  stage: number;
  /** What acts. */
  forces?: ForcesAtFoot;
  /** The outcome under it. */
  verdict: Verdict;
  /** The limit state that governs under it. */
  governing_limit_state_id: string;
  /** Its utilization. */
  governing_utilization?: number;
  /** Greatest pressure under the plate [MPa]. */
  peak_pressure_mpa: number;
  /** Tension of each rod, in the order of the request [kN]. */
  rod_tensions_kn: number[];
  /** Place of the combination in combinations, counted from 0. */
  combination_index: number;
  /** Where the plate presses. Absent where nothing balances the actions. */
  contact?: ContactState;
  /** What each rod is checked with, in the order of the request: tension with what
   * prying adds, and shear less what friction takes. Empty where nothing balances. */
  rod_forces: RodForce[];
}

/** StageSettlement is what one stage comes to. */
export interface StageSettlement {
  /** Its name. */
  name: string;
  /** Net pressure [kPa]. */
  pressure_kpa: number;
  /** By elasticity, of the footing as it is [mm]; absent: data are missing. */
  elastic_mm?: number;
  /** Of sand by cone resistance, Schmertmann [mm]; absent: data are missing. */
  schmertmann_mm?: number;
  /** Of sand by blow count, Burland and Burbidge [mm]; absent: data are missing. */
  burland_burbidge_mm?: number;
  /** Of clay by one-dimensional consolidation [mm]; absent: data are missing. */
  consolidation_mm?: number;
  /** By elasticity, of the centre if the footing were flexible [mm]. */
  centre_mm: number;
  /** Steepest slope of the footing by elasticity, with what stands on the ground. */
  tilt: number;
  /** Of all layers, what different methods find of different layers added [mm];
   * absent: nothing is to be added, or a layer is not known. */
  total_mm?: number;
  /** What stands on the ground, such as a stack, settles by itself in this stage
   * [mm]. It adds to each of the figures above, which are of the ground alone. */
  above_mm: number;
  /** Of CheckColumnBase: place of the combination in result.combinations,
   * counted from 0. Absent: the permanent actions of the stage alone. */
  combination_index?: number;
  /** Of CheckColumnBase: the stage of the actions, counted from 0. Absent: none. */
  stage_index?: number;
}

/** CheckResult is the answer of one check. */
export interface CheckResult {
  /** The caller's label, unchanged. */
  label: string;
  /** The basis by which the check was made. */
  basis: Basis;
  /** Edition of its standards, by name. */
  edition: string;
  /** National annex by which it was made; empty: the recommended values. */
  annex: string;
  /** FAIL when any limit state fails; else OUT_OF_SCOPE when any is out of
   * scope; else PASS; NOT_APPLICABLE when there was nothing to check. */
  verdict: Verdict;
  /** Why, when the whole check is out of scope or not applicable; else empty. */
  reason: string;
  /** Id of the limit state that governs: one that fails without a utilization,
   * else the highest utilization. Empty when none has either. */
  governing_limit_state_id: string;
  /** Utilization of the governing limit state, demand over resistance. Absent
   * when it has none. */
  governing_utilization?: number;
  /** Every limit state of the check in its fixed order; empty at
   * DETAIL_GOVERNING. */
  limit_states: LimitState[];
  /** Assumptions, cautions and limits of validity. At DETAIL_GOVERNING without
   * text. */
  notices: Notice[];
  /** Partial and resistance factors used; empty at DETAIL_GOVERNING. */
  factors: FactorUsed[];
  /** The calculation step by step; only at DETAIL_DERIVATION. */
  derivation: DerivationStep[];
  /** Of a column base: the combinations that the answer refers to, each once; with their
   * rows every one that was checked for strength. Empty at DETAIL_GOVERNING without rows. */
  combinations: Combination[];
  /** Of a column base: a row for every combination, when the request asks for them. */
  combination_rows: CombinationRow[];
  /** Of a settlement and of a column base whose ground has one: what each stage results in.
   * Empty at DETAIL_GOVERNING. */
  settlement_stages: StageSettlement[];
}

/** BasisEdition is a basis with the editions of its standards. */
export interface BasisEdition {
  /** The basis. */
  basis: Basis;
  /** Standards with their editions, in one line. */
  editions: string;
}

/** Provenance says what produced an answer. */
export interface Provenance {
  /** Version of the service. */
  service_version: string;
  /** Revision of the calculation kernel: grows when a result may change. */
  kernel_revision: number;
  /** The bases used, each with the editions of its standards. */
  bases: BasisEdition[];
  /** What every answer is and is not. */
  caution: string;
}

/** CheckBearingResponse answers CheckBearing. */
export interface CheckBearingResponse {
  /** The answer. */
  result?: CheckResult;
  /** What produced it. */
  provenance?: Provenance;
}

/** CheckPlateBendingResponse answers CheckPlateBending. */
export interface CheckPlateBendingResponse {
  /** The answer. */
  result?: CheckResult;
  /** What produced it. */
  provenance?: Provenance;
}

/** CheckWeldResponse answers CheckWeld. */
export interface CheckWeldResponse {
  /** The answer. */
  result?: CheckResult;
  /** What produced it. */
  provenance?: Provenance;
}

/** CheckAnchorRodsResponse answers CheckAnchorRods. */
export interface CheckAnchorRodsResponse {
  /** The answer. */
  result?: CheckResult;
  /** What produced it. */
  provenance?: Provenance;
}

/** CheckAnchorageResponse answers CheckAnchorage. */
export interface CheckAnchorageResponse {
  /** The answer. */
  result?: CheckResult;
  /** What produced it. */
  provenance?: Provenance;
}

/** CheckPinResponse answers CheckPin. */
export interface CheckPinResponse {
  /** The answer. */
  result?: CheckResult;
  /** What produced it. */
  provenance?: Provenance;
}

/** CheckSettlementResponse answers CheckSettlement. */
export interface CheckSettlementResponse {
  /** The answer: for each method its greatest settlement against the limit. */
  result?: CheckResult;
  /** What produced it. */
  provenance?: Provenance;
}

/** CheckFootingResponse answers CheckFooting. */
export interface CheckFootingResponse {
  /** The answer. */
  result?: CheckResult;
  /** What produced it. */
  provenance?: Provenance;
}

/** CheckRingStackResponse answers CheckRingStack. */
export interface CheckRingStackResponse {
  /** The answer. */
  result?: CheckResult;
  /** What produced it. */
  provenance?: Provenance;
}

/** FieldViolation names one field that was refused. */
export interface FieldViolation {
  /** Path of the field from the request (in a batch: from the item), such as
   * plate.size_x_mm or rods.positions[2].x_mm. */
  field: string;
  /** What is wrong, with value, limit and unit. */
  description: string;
  /** The kind of fault. */
  reason: FieldReason;
}

/** Refusal says why an item could not be checked. */
export interface Refusal {
  /** Every field that was refused. */
  violations: FieldViolation[];
}

/** CheckOutcome is what became of one item. */
export interface CheckOutcome {
  /** Place of the item, counted from 0: in the call for CheckMany, over the whole
   * stream for StreamChecks. */
  index: number;
  /** The answer, the same as of the item alone. */
  result?: CheckResult;
  /** The fields for which the item was refused. */
  refusal?: Refusal;
}

/** CheckManyResponse answers CheckMany. */
export interface CheckManyResponse {
  /** As many outcomes as items, in the same order. */
  outcomes: CheckOutcome[];
  /** What produced them. */
  provenance?: Provenance;
}

/** CheckColumnBaseResponse answers CheckColumnBase. */
export interface CheckColumnBaseResponse {
  /** The answer: for each limit state the worst combination, which it names. */
  result?: CheckResult;
  /** What produced it. */
  provenance?: Provenance;
}

/** SizeChoice is one choice. */
export interface SizeChoice {
  /** Places in the lists of the offer, counted from 0; 0 for an empty list. */
  plan: number;
  /** Place of the thickness. */
  thickness: number;
  /** Place of the rod. */
  rod: number;
  /** Place of the throat. */
  throat: number;
  /** Size of the plate along x [mm]. */
  size_x_mm: number;
  /** Size of the plate along y [mm]. */
  size_y_mm: number;
  /** Thickness of the plate [mm]. */
  thickness_mm: number;
  /** Thread of the rods; empty without rods. */
  thread_designation: string;
  /** Throat of the weld [mm]; 0 without weld. */
  throat_mm: number;
  /** Mass of plates, rods as in SizeRates, weld metal and fill [kg]. */
  mass_kg: number;
  /** Its cost by the rates. */
  cost: number;
  /** The outcome. */
  verdict: Verdict;
  /** The limit state that governs. */
  governing_limit_state_id: string;
  /** Its utilization. */
  governing_utilization?: number;
  /** The combination that governs. */
  combination: string;
  /** Grade or class of the rods' steel; empty without rods or where strengths were
   * given. */
  rod_steel: string;
  /** Place of the bottom plate. */
  bottom_plate: number;
  /** Place of the stack. */
  stack: number;
  /** Why the limit state that governs could not be verified or fails without numbers;
   * empty: by its numbers. */
  reason: string;
}

/** SizeStop is what stops the next smaller value of a list. */
export interface SizeStop {
  /** Which list. */
  dimension: SizeDimension;
  /** Index of the smaller value in it, counted from 0. */
  index: number;
  /** The limit state that it does not satisfy: that which fails, else that which is out
   * of scope, else that which is used too much; empty: it passes but costs more. */
  limit_state_id: string;
  /** Utilization there. */
  utilization?: number;
  /** Why that limit state could not be verified or fails without numbers; empty: by its
   * numbers. */
  reason: string;
}

/** SizeColumnBaseResponse answers SizeColumnBase. */
export interface SizeColumnBaseResponse {
  /** The caller's label, unchanged. */
  label: string;
  /** Whether any choice passes. */
  found: boolean;
  /** The cheapest that passes; when none does, the closest miss. */
  best?: SizeChoice;
  /** The next cheapest that passes, if any. */
  next_best?: SizeChoice;
  /** For the best, what stops the next smaller value of each list. */
  stops: SizeStop[];
  /** Choices offered in all. */
  choices: number;
  /** Choices that were checked; the others follow from them. */
  checked: number;
  /** Notices of the best choice. */
  notices: Notice[];
  /** What produced the answer. */
  provenance?: Provenance;
}

/** ItemFigure is a rate times a quantity. */
export interface ItemFigure {
  /** The figure; absent: not known, for the reason. */
  value?: number;
  /** The rate. */
  rate: number;
  /** What it counts by. */
  per: RateMeasure;
  /** Where the rate comes from. */
  source: string;
  /** Whether the rate stands in for one that was not given. */
  by_default: boolean;
  /** Why the figure is not known. */
  reason: string;
}

/** ItemRow is an item with what it takes. */
export interface ItemRow {
  /** Kind. */
  kind: ItemKind;
  /** Its name. */
  name: string;
  /** Mass [kg]; 0: not counted by mass. */
  mass_kg: number;
  /** Volume in place [m3]; 0: not counted by volume. */
  volume_m3: number;
  /** Loose volume, as delivered or dug [m3]; 0: not known. */
  loose_volume_m3: number;
  /** Area [m2]; 0: not counted by area. */
  area_m2: number;
  /** Pieces; 0: not counted by pieces. */
  count: number;
  /** Money. */
  cost?: ItemFigure;
  /** Labour [hours]. */
  hours?: ItemFigure;
  /** Carbon, A1 to A3 [kg CO2e]. */
  carbon?: ItemFigure;
  /** Money of transport; absent: nothing is carried. */
  transport_cost?: ItemFigure;
  /** Carbon of transport, A4 [kg CO2e]; absent: nothing is carried. */
  transport_carbon?: ItemFigure;
}

/** PartialSum is a total with what it lacks. */
export interface PartialSum {
  /** Of the rows that are known. */
  value: number;
  /** Names of the rows that are missing; none: the total is whole. */
  missing: string[];
}

/** FootingTotals are the totals of one footing. */
export interface FootingTotals {
  /** Materials brought to the site [kg]. */
  mass_kg?: PartialSum;
  /** Concrete, blinding, fill and levelling layer in place [m3]. */
  volume_m3?: PartialSum;
  /** Dug, in place [m3]. */
  dug_m3: number;
  /** Money, without transport. */
  cost?: PartialSum;
  /** Labour [hours]. */
  hours?: PartialSum;
  /** Carbon of materials and formwork, A1 to A3, and of work on site where its rate was
   * given [kg CO2e]. */
  carbon?: PartialSum;
  /** Money of transport. */
  transport_cost?: PartialSum;
  /** Carbon of transport, A4 [kg CO2e]. */
  transport_carbon?: PartialSum;
}

/** FootingCount is one footing: whether it holds and what it takes. */
export interface FootingCount {
  /** Its name. */
  name: string;
  /** How it was checked, limit state by limit state. */
  result?: CheckResult;
  /** What it is made of. */
  rows: ItemRow[];
  /** Totals. */
  totals?: FootingTotals;
}

/** Contrast is one total against another. */
export interface Contrast {
  /** The second less the first; absent: a total is partial. */
  difference?: number;
  /** The second over the first; absent: a total is partial, or the first is 0. */
  ratio?: number;
}

/** FootingContrast are the pad's totals against those of the ring footing. */
export interface FootingContrast {
  /** Why nothing is compared: a footing does not hold. Empty: totals are compared. */
  reason: string;
  /** Materials brought to the site. */
  mass?: Contrast;
  /** Concrete, blinding, fill and levelling layer. */
  volume?: Contrast;
  /** Money. */
  cost?: Contrast;
  /** Labour. */
  hours?: Contrast;
  /** Carbon, A1 to A3. */
  carbon?: Contrast;
  /** Money of transport. */
  transport_cost?: Contrast;
  /** Carbon of transport, A4. */
  transport_carbon?: Contrast;
}

/** PadBars are equal bars at the underside of a pad, the same both ways. */
export interface PadBars {
  /** Diameter [mm]. Required. 4 to 60. */
  diameter_mm: number;
  /** Between centres [mm]. Required. 20 to 1000. */
  spacing_mm: number;
}

/** PadStop is what stops a smaller pad. */
export interface PadStop {
  /** What is smaller. */
  dimension: PadDimension;
  /** The limit state that it does not satisfy. */
  limit_state_id: string;
  /** Its utilization there. */
  utilization?: number;
}

/** PadChoice is a pad that was sized. */
export interface PadChoice {
  /** Whether it holds; else it is the closest miss. */
  found: boolean;
  /** Size along x [mm]. */
  size_x_mm: number;
  /** Size along y [mm]. */
  size_y_mm: number;
  /** Thickness [mm]. */
  thickness_mm: number;
  /** Bars both ways; absent: plain concrete. */
  bars?: PadBars;
  /** What stops the next smaller pads. */
  stops: PadStop[];
  /** Pads that might have been chosen. */
  choices: number;
  /** Pads that were checked. */
  checked: number;
}

/** CompareFootingsResponse answers CompareFootings. */
export interface CompareFootingsResponse {
  /** The caller's label, unchanged. */
  label: string;
  /** The ring footing, then the concrete pad. */
  footings: FootingCount[];
  /** The pad's totals against those of the ring footing. */
  contrast?: FootingContrast;
  /** The pad that was sized; the closest miss where none passes. */
  pad?: PadChoice;
  /** Assumptions, cautions and what is left out, of the comparison; those of the
   * checks stand with their results. */
  notices: Notice[];
  /** What produced the answer. */
  provenance?: Provenance;
}

/** Extreme is the greatest and the least of one component. */
export interface Extreme {
  /** The component. */
  component: ForceComponent;
  /** Place of the combination with the greatest value in the answer, counted
   * from 0; of equals, the first. */
  greatest: number;
  /** Place of the combination with the least value. */
  least: number;
}

/** Envelope holds the extremes of the combinations of one kind. */
export interface Envelope {
  /** Of which combinations. */
  kind: CombinationKind;
  /** The extremes of the six components, in their order. */
  extremes: Extreme[];
}

/** CombineActionsResponse answers CombineActions. */
export interface CombineActionsResponse {
  /** The caller's label, unchanged. */
  label: string;
  /** The basis by which the actions were combined. */
  basis: Basis;
  /** Edition of its standards, by name. */
  edition: string;
  /** National annex by which they were combined; empty: the recommended values. */
  annex: string;
  /** The combinations, by kind and stage. */
  combinations: Combination[];
  /** The envelope of each kind, all stages together. */
  envelopes: Envelope[];
  /** Assumptions and cautions. */
  notices: Notice[];
  /** The factors used, each with its source. */
  factors: FactorUsed[];
  /** What produced the answer. */
  provenance?: Provenance;
}

/** TestValue is a value that tests give, or the reason why they do not. */
export interface TestValue {
  /** The value [kN]. Absent: there is none. */
  value_kn?: number;
  /** Why there is none; else empty. */
  reason: string;
}

/** SurvivorBound is what loads that were borne show without any law of strength. */
export interface SurvivorBound {
  /** Load that every test bore [kN]. */
  load_kn: number;
  /** Share of the population that bears it at the confidence asked. */
  share: number;
  /** Tests without failure by which it would be a 5 % fractile at that confidence. */
  tests_needed: number;
  /** X_k by the bound of the median, log-normal, V known [kN]. Absent unless no test
   * failed by the mode. */
  characteristic_kn?: number;
}

/** CorrelatedValue is what EN 1997-1 7.6.2.2(8) comes to. */
export interface CorrelatedValue {
  /** xi_1 used. */
  xi_mean: number;
  /** xi_2 used. */
  xi_least: number;
  /** R_k [kN]. Absent where the tests are not one population. */
  characteristic_kn?: number;
  /** R_k / gamma_t [kN]. Absent without a partial factor. */
  design_kn?: number;
}

/** FamilyValue is what EN 1990 D8 comes to. */
export interface FamilyValue {
  /** b, mean of tested over predicted. */
  bias: number;
  /** V_delta of the model's error, as used. */
  error_variation: number;
  /** V_r of the resistance. */
  variation: number;
  /** r_k over predicted. Absent where the sizes are not to be pooled. */
  characteristic_ratio?: number;
  /** r_d over predicted. Absent likewise, and below 4 tests. */
  design_ratio?: number;
}

/** AssessLoadTestsResponse answers AssessLoadTests. */
export interface AssessLoadTestsResponse {
  /** The caller's label, unchanged. */
  label: string;
  /** Tests that failed by the mode. */
  failed: number;
  /** Tests that did not: stopped, or ended by another mode. */
  survived: number;
  /** Whether no test failed by the mode: every value is then a lower bound only. */
  lower_bound_only: boolean;
  /** How the characteristic value was found. */
  route: TestRoute;
  /** Mean of the loads at failure [kN]. Absent where a test did not fail by the mode. */
  mean_kn?: number;
  /** Coefficient of variation of the sample. Absent likewise, and of one test. */
  variation?: number;
  /** The coefficient of variation used. Absent where none was. */
  variation_used?: number;
  /** k_n. Absent where there is none. */
  factor?: number;
  /** X_k, normal [kN]. Absent where there is none above 0. */
  normal_kn?: number;
  /** X_k, log-normal [kN]. Absent where there is none. */
  log_normal_kn?: number;
  /** The characteristic value that stands: 5 % fractile [kN]. */
  characteristic?: TestValue;
  /** Design value by EN 1990 D7.2: eta_d X_k / gamma_M. */
  design?: TestValue;
  /** Design value by EN 1990 D7.3, log-normal; no gamma_M goes with it. */
  direct?: TestValue;
  /** X_k with the tests that were left out [kN]. Absent where none was left out. */
  with_all_kn?: number;
  /** What loads without failure show by themselves. */
  survivors?: SurvivorBound;
  /** EN 1997-1 7.6.2.2(8), beside. Absent for a family of sizes. */
  correlation?: CorrelatedValue;
  /** Allowable load by IBC 1709.3.1, a total factor of 2.5 on the least. */
  allowable?: TestValue;
  /** phi R, on the mean. */
  phi_mean?: TestValue;
  /** phi. Absent where there is none. */
  phi?: number;
  /** The model of a family of sizes. Absent without family. */
  family?: FamilyValue;
  /** Assumptions, cautions and limits of validity. At DETAIL_GOVERNING without text. */
  notices: Notice[];
  /** Factors used; empty at DETAIL_GOVERNING. */
  factors: FactorUsed[];
  /** The calculation step by step; only at DETAIL_DERIVATION. */
  derivation: DerivationStep[];
  /** What produced the answer. */
  provenance?: Provenance;
}

/** CriterionReading is one criterion held against the record. */
export interface CriterionReading {
  /** The criterion. */
  criterion: FailureCriterion;
  /** Load at which it was met [kN]. Absent: it was not. */
  load_kn?: number;
  /** Why it was not met or could not be judged; of damage what was seen; else empty. */
  reason: string;
}

/** StageReading is what one stage came to. */
export interface StageReading {
  /** Load [kN]. */
  load_kn: number;
  /** Mean settlement at the last reading [mm]. */
  settlement_mm: number;
  /** Greatest settlement of a gauge then [mm]. */
  edge_mm: number;
  /** Slope of the plane through the gauges [rad]. Absent without their radius. */
  tilt?: number;
}

/** TestModulus is the modulus of one cycle of loading. */
export interface TestModulus {
  /** E_v = 1.5 r/(a_1 + a_2 sigma_max) [MPa] (DIN 18134, from memory). Absent: none. */
  e_v_mpa?: number;
  /** E_PLT on the same secant [MPa] (EN 1997-2 K.2, from memory). Absent: none. */
  e_plt_mpa?: number;
  /** Why there is none; else empty. */
  reason: string;
}

/** SubgradeReaction is pressure over settlement, and what it is below the footing. */
export interface SubgradeReaction {
  /** k_s of the plate [N/mm3]. Absent: not read. */
  plate_n_mm3?: number;
  /** Settlement of the footing over that of the plate at the same pressure. Absent: not
   * asked. */
  scale?: number;
  /** k_s of the footing [N/mm3]. Absent: not asked. */
  footing_n_mm3?: number;
  /** Whether the footing is more than three times as wide as the plate: a bound only. */
  bound_only: boolean;
  /** Why it was not read; else empty. */
  reason: string;
}

/** HoldingCreep is the creep of one hold. */
export interface HoldingCreep {
  /** Stage, counted from 1. */
  stage: number;
  /** Settlement a cycle of log10 t [mm]. Absent: not read. */
  alpha_mm?: number;
  /** Its standard error [mm]. Absent likewise. */
  error_mm?: number;
  /** Whether there is no measurable creep: the 95 % bound was used. */
  none_measurable: boolean;
  /** alpha used [mm]. Absent likewise. */
  used_mm?: number;
  /** Settlement at the design life under this load [mm]. Absent: no life asked. */
  life_mm?: number;
  /** Why there is no alpha; else empty. */
  reason: string;
}

/** TestHyperbola is s/P = c_2 + c_1 s (Kondner 1963, Chin 1970, from memory). */
export interface TestHyperbola {
  /** Load that it runs to [kN]: no resistance. Absent: not to be used. */
  ultimate_kn?: number;
  /** Standard error of it [kN]; says nothing of a wrong law. */
  error_kn?: number;
  /** Initial stiffness [kN/mm]. */
  initial_kn_mm?: number;
  /** Extrapolated load: least of that at a tenth of the width and 1.25 of the greatest
   * held [kN]. */
  extrapolated_kn?: number;
  /** Why it is not to be used; else empty. */
  reason: string;
}

/** ClampReading is what the clamping rods do. */
export interface ClampReading {
  /** Load at which the rods go slack [kN]. Absent without clamp. */
  slack_load_kn?: number;
  /** Preload that embedment takes [kN]. Absent without clamp. */
  preload_lost_kn?: number;
  /** Load at which the rods go slack with what embedment leaves [kN]. Absent without
   * clamp. */
  slack_load_left_kn?: number;
  /** Preload at the design life by its record [kN]. Absent: not read. */
  preload_at_life_kn?: number;
  /** Its one-sided 95 % bound [kN]. Absent: not read. */
  preload_at_life_least_kn?: number;
  /** Load at which the rods go slack with that bound [kN]. Absent: not read. */
  slack_load_at_life_kn?: number;
  /** Why the record of the preload was not read; else empty. */
  reason: string;
}

/** ReadLoadTestResponse answers ReadLoadTest. */
export interface ReadLoadTestResponse {
  /** The caller's label, unchanged. */
  label: string;
  /** Whether a criterion of failure was met. */
  failed: boolean;
  /** The criterion that governs: the least load. UNSPECIFIED: none was met. */
  governing: FailureCriterion;
  /** Load at failure; where none was met the greatest load held, a lower bound [kN]. */
  resistance_kn: number;
  /** Every criterion in its fixed order. */
  criteria: CriterionReading[];
  /** What each stage came to, in the order of the request. */
  stages: StageReading[];
  /** First stage, counted from 1, from which on the record was not used. 0: all was. */
  unusable_from: number;
  /** Modulus of the first loading. */
  first_loading?: TestModulus;
  /** Modulus of the reload. */
  reload?: TestModulus;
  /** Subgrade reaction. */
  subgrade?: SubgradeReaction;
  /** Creep of every hold of the first loading. */
  creep: HoldingCreep[];
  /** Hyperbola through the first loading: extrapolated, no result of the test. */
  hyperbola?: TestHyperbola;
  /** What the clamping does. Absent without clamp and preload record. */
  clamp?: ClampReading;
  /** Assumptions, cautions and limits of validity. At DETAIL_GOVERNING without text. */
  notices: Notice[];
  /** The calculation step by step; only at DETAIL_DERIVATION. */
  derivation: DerivationStep[];
  /** What produced the answer. */
  provenance?: Provenance;
}

/** BasisEntry is a design basis. */
export interface BasisEntry {
  /** The basis. */
  basis: Basis;
  /** Name of the edition by which checks are made, as a request may name it. */
  edition: string;
  /** Its standards with their editions. */
  standards: string[];
  /** National annexes that a request may name. */
  annexes: string[];
  /** Factors with their default values and clauses. */
  factors: FactorUsed[];
}

/** ListDesignBasesResponse lists the design bases. */
export interface ListDesignBasesResponse {
  /** The bases. */
  bases: BasisEntry[];
}

/** SteelBand gives the strengths up to a thickness. */
export interface SteelBand {
  /** Greatest thickness of the band, included [mm]. */
  up_to_thickness_mm: number;
  /** Yield strength [MPa]. */
  fy_mpa: number;
  /** Tensile strength [MPa]. */
  fu_mpa: number;
}

/** SteelEntry is a steel grade. */
export interface SteelEntry {
  /** Designation, as a request names it. */
  grade: string;
  /** Strengths by thickness, thinnest first. */
  bands: SteelBand[];
  /** beta_w of EN 1993-1-8 Table 4.1; 0 where the table has none. */
  beta_w: number;
  /** Where the values come from. */
  source: string;
}

/** ListSteelsResponse lists the steels. */
export interface ListSteelsResponse {
  /** The steels. */
  steels: SteelEntry[];
}

/** RodSteelEntry is a property class or grade of rods. */
export interface RodSteelEntry {
  /** Designation, as a request names it. */
  grade: string;
  /** Yield strength [MPa]. */
  fy_mpa: number;
  /** Tensile strength [MPa]. */
  fu_mpa: number;
  /** Greatest nominal diameter for these strengths, included [mm]; 0: any. */
  up_to_diameter_mm: number;
  /** Where the values come from. */
  source: string;
}

/** ListRodSteelsResponse lists the rod steels. */
export interface ListRodSteelsResponse {
  /** The rod steels. */
  rod_steels: RodSteelEntry[];
}

/** ThreadEntry is a thread. */
export interface ThreadEntry {
  /** Designation, as a request names it. */
  designation: string;
  /** Nominal diameter [mm]. */
  diameter_mm: number;
  /** Pitch [mm]. */
  pitch_mm: number;
  /** Tensile stress area [mm2]. */
  stress_area_mm2: number;
  /** Where the values come from. */
  source: string;
}

/** ListThreadsResponse lists the threads. */
export interface ListThreadsResponse {
  /** The threads, smallest first, metric before inch. */
  threads: ThreadEntry[];
}

/** WeldMetalEntry is a filler. */
export interface WeldMetalEntry {
  /** Designation, as a request names it. */
  grade: string;
  /** Least tensile strength of the deposited metal [MPa]. */
  strength_mpa: number;
  /** Where the value comes from. */
  source: string;
}

/** ListWeldMetalsResponse lists the fillers. */
export interface ListWeldMetalsResponse {
  /** The fillers. */
  weld_metals: WeldMetalEntry[];
}

/** ConcreteEntry is a strength class of concrete. */
export interface ConcreteEntry {
  /** Designation, as a request names it. */
  grade: string;
  /** Cylinder strength [MPa]: f_ck or f'c. */
  strength_mpa: number;
  /** Where the value comes from. */
  source: string;
}

/** ListConcretesResponse lists the concretes. */
export interface ListConcretesResponse {
  /** The concretes. */
  concretes: ConcreteEntry[];
}

/** TimberEntry is a strength class or grade of timber. */
export interface TimberEntry {
  /** Designation, as a request names it. */
  grade: string;
  /** Compression along the grain [MPa]: f_c,0,k or F_c. */
  compression_along_mpa: number;
  /** Compression across the grain [MPa]: f_c,90,k or F_c-perp. */
  compression_across_mpa: number;
  /** What it is made of. */
  kind: TimberKind;
  /** The basis family whose values these are: BASIS_EUROCODE for characteristic
   * values, BASIS_US_ASD for reference design values (used by LRFD too). */
  basis: Basis;
  /** Where the values come from. */
  source: string;
}

/** ListTimbersResponse lists the timbers. */
export interface ListTimbersResponse {
  /** The timbers. */
  timbers: TimberEntry[];
}

/** UnitWeightEntry is the nominal unit weight of a material. */
export interface UnitWeightEntry {
  /** What it is. */
  material: string;
  /** Least mean value [kN/m3]: for what holds down. */
  min_kn_m3: number;
  /** Greatest mean value [kN/m3]: for what presses; equal to the least where the
   * source has one value. */
  max_kn_m3: number;
  /** Where the values come from. */
  source: string;
}

/** ListUnitWeightsResponse lists unit weights. */
export interface ListUnitWeightsResponse {
  /** The unit weights. Growing media are not among them: no standard gives them,
   * and they weigh far more wet than dry, so the supplier's values are needed for
   * both states. */
  unit_weights: UnitWeightEntry[];
}

/** LimitStateClause is where a basis sets a limit state. */
export interface LimitStateClause {
  /** The basis. */
  basis: Basis;
  /** Standard and clause. */
  clause: string;
  /** How well the number is held by this basis' code family. */
  evidence: Evidence;
}

/** LimitStateEntry is a limit state. */
export interface LimitStateEntry {
  /** The check it belongs to. */
  check: CheckKind;
  /** Stable name in snake case. */
  id: string;
  /** What it is, in words. */
  title: string;
  /** Unit of demand and resistance; empty without dimension. */
  unit: string;
  /** Bases that have it, with the clause of each. */
  clauses: LimitStateClause[];
}

/** ListLimitStatesResponse lists the limit states. */
export interface ListLimitStatesResponse {
  /** The limit states, by check, in the order of an answer. */
  limit_states: LimitStateEntry[];
}

/** NoticeEntry is a notice. */
export interface NoticeEntry {
  /** The check it belongs to; unspecified: the combination of actions. */
  check: CheckKind;
  /** Stable name in snake case. */
  code: string;
  /** How serious it is. */
  severity: Severity;
  /** The remark in words. */
  text: string;
}

/** ListNoticesResponse lists the notices. */
export interface ListNoticesResponse {
  /** The notices, by check. */
  notices: NoticeEntry[];
}
