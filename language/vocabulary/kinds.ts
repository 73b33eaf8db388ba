/** Lists of kinds that several parts of the vocabulary name. */

/** What a transfer can start or end at, besides the wheelchair and the bed. */
export const seatKinds = [
  "toilet",
  "commode",
  "shower-seat",
  "tub",
  "tub-bench",
  "armchair",
  "car-seat",
  "floor-place",
] as const;
/** What a transfer can start or end at, besides the wheelchair. */
export const surfaceKinds = ["bed", ...seatKinds] as const;
/** Every end that a transfer can have. */
export const endKinds = ["wheelchair", ...surfaceKinds] as const;
/** What is used in a transfer; `with` names it. */
export const aidKinds = ["board", "belt", "sheet", "towel", "handle", "sling", "lift"] as const;
/** What can be lent, rented or bought. */
export const kitKinds = [...endKinds, ...aidKinds, "ramp", "furniture"] as const;
/** What has a place in a room. */
export const placedKinds = [...surfaceKinds, "furniture", "handle"] as const;
/** Whatever a plan can name for a time: a phase uses it, `may change` speaks of it. */
export const thingKinds = [...kitKinds, "helper", "room", "route", "transfer", "way-back"] as const;
