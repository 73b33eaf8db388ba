/** Every derived quantity, once. */
import type { QuantityRule } from "../quantity.js";
import * as bearing from "./board-bearing.js";
import * as rise from "./board-rise.js";
import * as slope from "./board-slope.js";
import * as gap from "./gap.js";
import { loadedFrom, loadedTo } from "./height-loaded.js";
import { heightRise } from "./height-rise.js";
import { boardSpan } from "./laying.js";
import * as landing from "./landing.js";
import * as load from "./load-ratio.js";
import { parkContact } from "./parked.js";
import { roomClearance } from "./room-clearance.js";
import { chairSideWindow } from "./side-window.js";

export const quantities: readonly QuantityRule[] = [
  heightRise,
  loadedFrom,
  loadedTo,
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
  load.loadRatioChair,
  load.loadRatioBoard,
  load.loadRatioSurface,
];

/** By name, as rules write them. */
export const quantityNamed: ReadonlyMap<string, QuantityRule> = new Map(quantities.map((q) => [q.name, q]));
