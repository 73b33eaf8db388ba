/** Every derived quantity, once. */
import type { QuantityRule } from "../quantity.js";
import * as beam from "./bending.js";
import * as bearing from "./board-bearing.js";
import * as incline from "./board-incline.js";
import { boardLip } from "./board-lip.js";
import * as rise from "./board-rise.js";
import * as slope from "./board-slope.js";
import { chairHold } from "./chair-hold.js";
import { chairLoad } from "./chair-load.js";
import * as margin from "./chair-margin.js";
import { pushFriction } from "./friction.js";
import * as gap from "./gap.js";
import { emptyFrom, emptyTo } from "./height-empty.js";
import { loadedFrom, loadedTo } from "./height-loaded.js";
import { heightOverPopliteal } from "./height-over-popliteal.js";
import { heightRise } from "./height-rise.js";
import { doorPastKnees } from "./door-past-knees.js";
import { doorClearWidth } from "./doors.js";
import * as helper from "./helper-share.js";
import { hipClearance } from "./hip-clearance.js";
import { boardSpan } from "./laying.js";
import * as landing from "./landing.js";
import { liftApproach } from "./lift-approach.js";
import * as load from "./load-ratio.js";
import { boardLoadShare } from "./load-share.js";
import { parkContact } from "./parked.js";
import * as push from "./push.js";
import * as ramp from "./ramp.js";
import * as reach from "./reach.js";
import { roomClearance } from "./room-clearance.js";
import * as fault from "./room-faults.js";
import * as misclosure from "./room-misclosure.js";
import * as side from "./room-side.js";
import * as route from "./route.js";
import { boardSeesaw } from "./seesaw.js";
import { chairSideWindow } from "./side-window.js";
import { turnBody } from "./turn-body.js";
import { helperStanding } from "./standing-room.js";
import * as threshold from "./threshold.js";
import { roomTurningCircle } from "./turning-circle.js";

export const quantities: readonly QuantityRule[] = [
  heightRise,
  emptyFrom,
  emptyTo,
  loadedFrom,
  loadedTo,
  heightOverPopliteal,
  rise.restEmptyFrom,
  rise.restEmptyTo,
  rise.restLoadedFrom,
  rise.restLoadedTo,
  rise.boardRiseStart,
  rise.boardRiseEnd,
  parkContact,
  gap.gapCorner,
  gap.gapComputed,
  gap.gapDisagreement,
  gap.gapHips,
  gap.gapWithoutLegrest,
  gap.gapAngleBest,
  chairSideWindow,
  bearing.bearingSeat,
  bearing.bearingSeatComputed,
  bearing.bearingSeatSquare,
  bearing.bearingSeatFirm,
  bearing.bearingSeatDisagreement,
  bearing.bearingLanding,
  bearing.bearingLandingComputed,
  bearing.bearingLandingSquare,
  bearing.bearingLandingFirm,
  bearing.bearingLandingPossible,
  bearing.bearingLandingDisagreement,
  boardSpan,
  bearing.wheelClearance,
  bearing.shortestThatFits,
  slope.boardRun,
  slope.runSeatHigher,
  slope.runBedHigher,
  slope.boardSlopeStart,
  slope.boardSlopeEnd,
  slope.boardSlope,
  landing.landingHips,
  landing.landingTarget,
  landing.landingScoot,
  roomClearance,
  reach.reachTightest,
  reach.reachPlace,
  reach.reachTurns,
  misclosure.roomMisclosure,
  misclosure.roomMisclosureShare,
  misclosure.roomMisclosureWall,
  fault.roomCrossings,
  fault.roomOutside,
  fault.roomOverlap,
  fault.doorPastWall,
  side.sideClearance,
  side.sideClearanceLeft,
  side.sideClearanceRight,
  roomTurningCircle,
  helperStanding,
  liftApproach,
  doorClearWidth,
  doorPastKnees,
  route.routeClearWidth,
  route.routeTurn,
  route.routeTurnWidth,
  threshold.thresholdHeight,
  threshold.thresholdUnbevelled,
  ramp.rampSlope,
  ramp.rampRise,
  ramp.rampRun,
  ramp.rampWidth,
  ramp.landingLength,
  load.loadRatioChair,
  load.loadRatioBoard,
  load.loadRatioSurface,
  load.loadRatioLift,
  load.loadRatioSling,
  load.loadRatioHandle,
  boardLoadShare,
  incline.inclineStart,
  incline.inclineEnd,
  pushFriction,
  push.pushStart,
  push.pushEnd,
  push.pushLeaving,
  push.pushLeavingExtra,
  push.pushPeak,
  push.pushShare,
  push.pushRunaway,
  helper.helperAll,
  helper.helperExpected,
  helper.helperExpectedOfTwo,
  helper.clientMustGive,
  beam.boardBendingStress,
  beam.boardBendingShare,
  beam.boardDeflection,
  boardLip,
  boardSeesaw,
  hipClearance,
  chairLoad,
  margin.chairForwardMargin,
  margin.chairForwardMarginLeaning,
  margin.chairForwardMarginPlates,
  margin.chairSideMargin,
  margin.chairSideMarginLeaning,
  margin.chairCastorGain,
  chairHold,
  turnBody,
];

/** By name, as rules write them. */
export const quantityNamed: ReadonlyMap<string, QuantityRule> = new Map(quantities.map((q) => [q.name, q]));
