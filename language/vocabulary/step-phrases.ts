/**
 * The steps of a transfer between a wheelchair and another surface, each declared once: how it is written, what people type
 * for it, what it needs and what it changes. The rows stand in the usual order of work (common practice); completion shows
 * them in that order, and a planned order takes the earlier row where two orders are equally short.
 */

interface PhraseRow {
  /** The formatter's words, without side and name. */
  readonly verb: string;
  /** The client's own left or right must be said. */
  readonly side?: true;
  /** A name may follow: the surface beside which the chair is parked (`approach bed`). */
  readonly object?: "surface";
  /** What people also type, in lower case; compound words are mended first (`leg rest`, `swing-away`). */
  readonly also?: readonly string[];
  readonly help: string;
  readonly needs: string;
  readonly changes: string;
}

const rows = [
  {
    verb: "move lines",
    also: ["move tubes", "move lines and tubes", "lines over", "clear lines", "move catheter"],
    help: "Bring tubes, bags and cables to the side the client moves to, with slack.",
    needs: "lines or tubes",
    changes: "the lines are moved",
  },
  {
    verb: "lock castors",
    also: [
      "castors locked",
      "castors on",
      "lock bed castors",
      "lock bed",
      "lock bed wheels",
      "lock bed brakes",
    ],
    help: "Lock the castors of the bed.",
    needs: "castors that lock, and somebody who can reach them",
    changes: "the castors are locked",
  },
  {
    verb: "set-height",
    object: "surface",
    also: [
      "set height of",
      "adjust height",
      "adjust height of",
      "height of",
      "raise bed",
      "lower bed",
      "level bed",
    ],
    help: "Set the height of the surface for this direction.",
    needs: "a surface that adjusts",
    changes: "the height is set; a bearing checked before no longer counts",
  },
  {
    verb: "lock brakes",
    also: ["brakes on", "brakes locked", "lock both brakes", "apply brakes", "put brakes on", "set brakes"],
    help: "Lock both wheel brakes of the chair.",
    needs: "brakes, and somebody who can reach them",
    changes: "the brakes are locked",
  },
  {
    verb: "remove legrest",
    side: true,
    also: ["legrest off", "remove footrest", "footrest off"],
    help: "Lift the leg rest off; the chair then parks closer than with the leg rest swung away.",
    needs: "a leg rest that lifts off",
    changes: "that leg rest is off; with both away nothing carries the feet",
  },
  {
    verb: "swing-away legrest",
    side: true,
    also: ["legrest away", "swing legrest", "swing away footrest", "footrest away"],
    help: "Swing the leg rest to the side; its hanger stays on the chair.",
    needs: "a leg rest that swings away and is on the chair",
    changes: "that leg rest is swung away; with both away nothing carries the feet",
  },
  {
    verb: "unlock brakes",
    also: [
      "brakes off",
      "brakes open",
      "brakes unlocked",
      "open brakes",
      "release brakes",
      "unlock both brakes",
    ],
    help: "Open the wheel brakes so that the chair can roll.",
    needs: "somebody who can reach the brakes",
    changes: "the brakes are open, and a check made before no longer counts",
  },
  {
    verb: "approach",
    object: "surface",
    also: [
      "drive to",
      "roll to",
      "wheel to",
      "go to",
      "park at",
      "park beside",
      "park",
      "chair to",
      "bring chair to",
    ],
    help: "Bring the chair up to the surface, as close as the transfer says.",
    needs: "open brakes, no board laid, somebody to move the chair",
    changes: "the chair stands at the surface",
  },
  {
    verb: "swing-away armrest",
    side: true,
    also: ["swing armrest", "armrest swung away"],
    help: "Swing the armrest out of the way.",
    needs: "an armrest that swings away",
    changes: "that armrest is away",
  },
  {
    verb: "flip-back armrest",
    side: true,
    also: ["flip up armrest", "flip armrest", "armrest up", "armrest back", "raise armrest"],
    help: "Flip the armrest up and back.",
    needs: "an armrest that flips back",
    changes: "that armrest is away",
  },
  {
    verb: "remove armrest",
    side: true,
    also: ["armrest off", "armrest out"],
    help: "Lift the armrest out of its sockets.",
    needs: "an armrest that lifts out",
    changes: "that armrest is away",
  },
  {
    verb: "sit on-edge",
    also: [
      "sit up on edge",
      "sit at edge",
      "sit on bed edge",
      "sit on edge of bed",
      "sit at edge of bed",
      "sit up",
    ],
    help: "Come from lying to sitting on the edge of the bed.",
    needs: "a client who is on the bed",
    changes: "the client sits; nothing carries the feet until they are placed",
  },
  {
    verb: "helper in-front",
    also: ["helper front", "stand in front", "helper to front"],
    help: "The helper goes in front of the client, knees beside the client's knees.",
    needs: "a helper",
    changes: "the helper is in front",
  },
  {
    verb: "helper behind",
    also: ["stand behind", "helper at back"],
    help: "The helper goes behind the client.",
    needs: "a helper",
    changes: "the helper is behind",
  },
  {
    verb: "helper at-side",
    also: ["helper beside", "helper to side", "stand at side"],
    help: "The helper goes to the side of the client.",
    needs: "a helper",
    changes: "the helper is at the side",
  },
  {
    verb: "belt on",
    also: ["put belt on", "put on belt", "fasten belt", "apply belt"],
    help: "Put the transfer belt round the waist. It guides and steadies; it does not lift.",
    needs: "a transfer belt",
    changes: "the belt is on",
  },
  {
    verb: "scoot forward",
    also: ["scoot to front", "move forward", "hips forward", "slide forward"],
    help: "Move the hips forward so that they clear the wheel.",
    needs: "a client who sits on one of the two surfaces",
    changes: "the hips are forward; a bearing checked before no longer counts",
  },
  {
    verb: "lean",
    side: true,
    also: ["lean to", "lean over to"],
    help: "Lean the trunk to that side, so that the other hip comes free.",
    needs: "a client who sits",
    changes: "the trunk leans to that side",
  },
  {
    verb: "place board",
    also: [
      "put board",
      "board in",
      "insert board",
      "board under",
      "place board under",
      "lay board",
      "set board",
    ],
    help: "Lay the board with one end under the near hip and the other on the landing.",
    needs: "a board, the chair at the surface, a client who sits on the side to be left",
    changes: "the board is placed; brakes and bearing have to be checked again",
  },
  {
    verb: "sit upright",
    also: ["upright", "sit straight", "straighten up", "sit back upright"],
    help: "Bring the trunk upright again.",
    needs: "a client who sits",
    changes: "the trunk is upright",
  },
  {
    verb: "check bearing",
    also: ["bearing checked", "check board", "check board ends", "check both ends", "check ends"],
    help: "Look and feel that both ends of the board bear far enough.",
    needs: "the board in its place",
    changes: "the bearing is checked",
  },
  {
    verb: "feet on floor",
    also: ["feet to floor", "feet floor", "feet down", "place feet", "feet flat", "feet flat on floor"],
    help: "Set both feet flat on the floor, where they will be needed.",
    needs: "a client who sits",
    changes: "the feet are on the floor",
  },
  {
    verb: "feet supported",
    also: ["support feet", "feet on stool", "feet on box"],
    help: "Set both feet on a stool or box that cannot slip, where the floor is out of reach.",
    needs: "a client who sits",
    changes: "the feet are supported",
  },
  {
    verb: "footplates up",
    also: [
      "plates up",
      "flip up footplates",
      "flip footplates up",
      "fold footplates",
      "raise footplates",
      "footrest up",
    ],
    help: "Turn the footplates up.",
    needs: "footplates that turn up, with no foot on them",
    changes: "the footplates are up",
  },
  {
    verb: "check brakes",
    also: ["brakes checked", "check both brakes", "recheck brakes", "test brakes"],
    help: "Push the chair to feel that both brakes hold.",
    needs: "locked brakes, and somebody who can reach them",
    changes: "the brakes are checked",
  },
  {
    verb: "slide part-way",
    also: ["slide half way", "slide halfway", "slide to middle", "slide onto board"],
    help: "Move part of the way across and pause on the board.",
    needs: "the board in its place",
    changes: "the client is on the board, between the surfaces",
  },
  {
    verb: "slide",
    also: ["slide across", "slide over", "move across", "transfer", "cross"],
    help: "Move across in small moves, lifting rather than dragging.",
    needs: "the chair at the surface, and the board in its place if one is used",
    changes: "the client is on the other surface",
  },
  {
    verb: "withdraw board",
    also: [
      "remove board",
      "board out",
      "board away",
      "pull board",
      "pull board out",
      "take board out",
      "take away board",
    ],
    help: "Take the board out from under the hip.",
    needs: "the board in its place, and a client who is not between the surfaces",
    changes: "the board is put away",
  },
  {
    verb: "position in-bed",
    also: ["lie down", "position", "legs into bed", "legs in bed", "swing legs in", "lie back"],
    help: "Bring legs and trunk into the bed and settle the client.",
    needs: "a client who is on the bed",
    changes: "the client lies, the feet on the mattress",
  },
  {
    verb: "position in-chair",
    also: ["sit back", "hips back", "settle in chair"],
    help: "Bring the hips to the back of the seat and settle the client.",
    needs: "a client who is in the chair",
    changes: "the hips are back and the trunk upright",
  },
  {
    verb: "scoot back",
    also: ["move back", "scoot backwards", "slide back"],
    help: "Move the hips back on the seat or the bed.",
    needs: "a client who sits on one of the two surfaces",
    changes: "the hips are back; a bearing checked before no longer counts",
  },
  {
    verb: "belt off",
    also: ["remove belt", "undo belt", "take belt off"],
    help: "Take the transfer belt off.",
    needs: "a transfer belt",
    changes: "the belt is off",
  },
  {
    verb: "restore armrest",
    side: true,
    also: ["refit armrest", "armrest on", "armrest down", "replace armrest", "armrest in place"],
    help: "Put the armrest back in its place.",
    needs: "an armrest, with no board lying there and nobody on the way across",
    changes: "that armrest is in place",
  },
  {
    verb: "refit legrest",
    side: true,
    also: [
      "restore legrest",
      "legrest on",
      "replace legrest",
      "legrest in place",
      "refit footrest",
      "swing back legrest",
    ],
    help: "Put the leg rest back in its place.",
    needs: "a leg rest",
    changes: "that leg rest is in place",
  },
  {
    verb: "footplates down",
    also: ["plates down", "flip footplates down", "unfold footplates", "lower footplates", "footrest down"],
    help: "Turn the footplates down.",
    needs: "a leg rest on the chair",
    changes: "the footplates are down",
  },
  {
    verb: "feet on plates",
    also: ["feet on footplates", "feet to plates", "feet on footrest"],
    help: "Set both feet on the footplates.",
    needs: "a client in the chair, a leg rest in place, plates down",
    changes: "the feet are on the plates",
  },
  {
    verb: "back-away",
    also: ["back chair away", "move chair away", "chair away", "reverse", "drive away"],
    help: "Bring the chair away from the surface.",
    needs: "open brakes, no board laid, somebody to move the chair",
    changes: "the chair stands away from the surface",
  },
  {
    verb: "unlock castors",
    also: ["castors off", "castors unlocked", "unlock bed", "unlock bed castors", "unlock bed wheels"],
    help: "Unlock the castors of the bed.",
    needs: "castors that lock, and somebody who can reach them",
    changes: "the castors are unlocked",
  },
] as const satisfies readonly PhraseRow[];

export type Verb = (typeof rows)[number]["verb"];
export interface StepPhrase extends PhraseRow {
  readonly verb: Verb;
}

/** All steps that can be written, in the usual order of work. */
export const stepPhrases: readonly StepPhrase[] = rows;
