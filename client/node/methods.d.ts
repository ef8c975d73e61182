// Written from the contract by .ci/generate. Do not edit.
import type * as requests from './requests';
import type * as responses from './responses';

/** Request and response of every method. */
export interface Methods {
  /** CheckBearing verifies the medium under a plate: concrete, timber, or any
   * other by a given pressure. */
  CheckBearing: { request: requests.CheckBearingRequest; response: responses.CheckBearingResponse };
  /** CheckPlateBending verifies the bending of a base plate on its compression
   * and tension side, and gives the thickness needed. */
  CheckPlateBending: { request: requests.CheckPlateBendingRequest; response: responses.CheckPlateBendingResponse };
  /** CheckWeld verifies fillet and groove welds, a single run or a group. */
  CheckWeld: { request: requests.CheckWeldRequest; response: responses.CheckWeldResponse };
  /** CheckAnchorRods verifies the steel of threaded rods, and the plate at their
   * holes. What holds the rods below is CheckAnchorage's. */
  CheckAnchorRods: { request: requests.CheckAnchorRodsRequest; response: responses.CheckAnchorRodsResponse };
  /** CheckAnchorage verifies what holds rods below: heads in concrete, or a bottom
   * plate under a stack of fill. */
  CheckAnchorage: { request: requests.CheckAnchorageRequest; response: responses.CheckAnchorageResponse };
  /** CheckPin verifies the pins between a timber column and the plates of its shoe,
   * the timber at them, the plates, and the weld of the plates where it is given. */
  CheckPin: { request: requests.CheckPinRequest; response: responses.CheckPinResponse };
  /** CheckSettlement predicts the settlement of a footing, stage by stage, by
   * every method that the data allow. */
  CheckSettlement: { request: requests.CheckSettlementRequest; response: responses.CheckSettlementResponse };
  /** CheckFooting verifies a footing on the ground: bearing, sliding, overturning,
   * uplift and eccentricity. */
  CheckFooting: { request: requests.CheckFootingRequest; response: responses.CheckFootingResponse };
  /** CheckRingStack verifies a stack of rings rammed with granular fill. No code
   * covers it: without tests of rings and stack a strength that suffices is
   * answered OUT_OF_SCOPE with its numbers, never PASS. */
  CheckRingStack: { request: requests.CheckRingStackRequest; response: responses.CheckRingStackResponse };
  /** CheckMany makes many checks of any kind in one call. A bad item fails alone,
   * in its place; the rest are answered. */
  CheckMany: { request: requests.CheckManyRequest; response: responses.CheckManyResponse };
  /** CheckColumnBase shares every combination of actions between the support and
   * the rods, checks bearing, plate, weld, rods and their anchorage under it, then
   * the stack of rings and the ground below where they are given, and answers
   * with the worst of each limit state. */
  CheckColumnBase: { request: requests.CheckColumnBaseRequest; response: responses.CheckColumnBaseResponse };
  /** SizeColumnBase looks for the cheapest choice of plate, thickness, rod, weld,
   * bottom plate and stack that holds, among those that the caller offers. */
  SizeColumnBase: { request: requests.SizeColumnBaseRequest; response: responses.SizeColumnBaseResponse };
  /** CompareFootings checks a base on its stack of rings, sizes a concrete pad for
   * the same loads on the same ground, and counts what each takes: materials,
   * digging, mass, cost, hours of labour and embodied carbon. Rates are the
   * caller's; only carbon has defaults, each with its source. A total that lacks a
   * row says so and is not compared. */
  CompareFootings: { request: requests.CompareFootingsRequest; response: responses.CompareFootingsResponse };
  /** CombineActions writes out every combination of the chosen basis for every
   * stage, each named as its standard writes it, and the envelope.
   * 
   * Actions are characteristic (Eurocode) or nominal (ASCE 7) values and are
   * combined linearly: effects of second order are the caller's. */
  CombineActions: { request: requests.CombineActionsRequest; response: responses.CombineActionsResponse };
  /** AssessLoadTests finds the characteristic and the design resistance from tests of
   * one population: EN 1990 Annex D, tests stopped without failure by likelihood,
   * and beside it EN 1997-1 Table A.9 and two routes of the United States. */
  AssessLoadTests: { request: requests.AssessLoadTestsRequest; response: responses.AssessLoadTestsResponse };
  /** ReadLoadTest reads the record of one load test: failure by each criterion or a
   * lower bound, moduli, subgrade reaction, creep, and the preload of clamping rods. */
  ReadLoadTest: { request: requests.ReadLoadTestRequest; response: responses.ReadLoadTestResponse };
  /** ListDesignBases lists the bases with editions and default factors. */
  ListDesignBases: { request: requests.ListDesignBasesRequest; response: responses.ListDesignBasesResponse };
  /** ListSteels lists the steels of plates and joined parts. */
  ListSteels: { request: requests.ListSteelsRequest; response: responses.ListSteelsResponse };
  /** ListRodSteels lists the property classes and grades of rods. */
  ListRodSteels: { request: requests.ListRodSteelsRequest; response: responses.ListRodSteelsResponse };
  /** ListThreads lists threads with their stress areas. */
  ListThreads: { request: requests.ListThreadsRequest; response: responses.ListThreadsResponse };
  /** ListWeldMetals lists fillers. */
  ListWeldMetals: { request: requests.ListWeldMetalsRequest; response: responses.ListWeldMetalsResponse };
  /** ListConcretes lists strength classes of concrete. */
  ListConcretes: { request: requests.ListConcretesRequest; response: responses.ListConcretesResponse };
  /** ListTimbers lists strength classes of timber. */
  ListTimbers: { request: requests.ListTimbersRequest; response: responses.ListTimbersResponse };
  /** ListUnitWeights lists unit weights, from which to work out actions. */
  ListUnitWeights: { request: requests.ListUnitWeightsRequest; response: responses.ListUnitWeightsResponse };
  /** ListLimitStates lists every limit state that an answer can hold. */
  ListLimitStates: { request: requests.ListLimitStatesRequest; response: responses.ListLimitStatesResponse };
  /** ListNotices lists every notice that an answer can hold. */
  ListNotices: { request: requests.ListNoticesRequest; response: responses.ListNoticesResponse };
}

/** The method of every kind of check. */
export interface Kinds {
  bearing: 'CheckBearing';
  plate_bending: 'CheckPlateBending';
  weld: 'CheckWeld';
  anchor_rods: 'CheckAnchorRods';
  column_base: 'CheckColumnBase';
  anchorage: 'CheckAnchorage';
  pin: 'CheckPin';
  settlement: 'CheckSettlement';
  footing: 'CheckFooting';
  ring_stack: 'CheckRingStack';
}
