/** What the steps of a transfer are run against, read from its things. Whatever is not said is left out and stays unknown. */
import { surfaceSideOf } from "../language/model/sides.js";
import { isQuantity, type Thing, type Value } from "../language/model/types.js";
import type { Side } from "./scene.js";
import type { ArmrestKind, Found, LegRestKind, StepSetup, SurfaceArmKind } from "./steps/setup.js";

type Parts = { readonly [part: string]: Value | undefined };
const parts = (v: Value | undefined): Parts =>
  typeof v === "object" && v !== null && !Array.isArray(v) ? (v as Parts) : {};
const word = (v: Value | undefined): string | undefined => (typeof v === "string" ? v : undefined);
const flag = (v: Value | undefined): boolean | undefined => (typeof v === "boolean" ? v : undefined);

type BySide<T> = { readonly left?: T; readonly right?: T };

export interface Played {
  /** Reads a key of the transfer. */
  readonly value: (key: string) => Value | undefined;
  readonly from: Thing | undefined;
  /** The wheelchair, or what stands in its place. */
  readonly seat: Thing | undefined;
  readonly surface: Thing | undefined;
  readonly side?: Side;
  readonly helpers: number;
  /** Whether an aid of this kind is used. */
  readonly uses: (kind: string) => boolean;
  readonly client: Thing | undefined;
  readonly found: Found | undefined;
}

export function stepSetup(p: Played): StepSetup {
  const { seat, surface } = p;
  const surfaceSide = surfaceSideOf(p.value);
  const castors = word(surface?.values["castors"]) as StepSetup["castors"];
  const wet = flag(p.value("wet")) ?? flag(surface?.values["wet"]);
  const skinCovered = flag(p.value("skin-covered"));
  const lines = linesOf(p.client);
  const adjusts = adjustsOf(surface);
  const adjustable = [surface, seat].flatMap((t) => (t && adjustsOf(t) === true ? [t.name] : []));
  return {
    direction: seat && p.from === seat ? "from-chair" : "to-chair",
    ...(p.side && { side: p.side }),
    ...(surfaceSide && surface?.kind !== "bed" && { surfaceSide }),
    surface: { name: surface?.name ?? "bed", kind: surface?.kind ?? "bed" },
    ...(seat?.kind === "commode" && { chair: { name: seat.name, kind: "commode" as const } }),
    ...seatSetup(seat),
    ...(surface && surface.values["arms"] !== undefined && { surfaceArms: armsOf(surface) }),
    helped: p.helpers > 0,
    helpers: p.helpers,
    belt: p.uses("belt"),
    board: p.uses("board"),
    ...(p.uses("lift") && { lift: true }),
    ...(p.uses("sling") && { sling: true }),
    ...(p.uses("sheet") && { sheet: true }),
    ...(lines !== undefined && { lines }),
    ...(castors && { castors }),
    ...(adjusts !== undefined && { adjusts }),
    ...(adjustable.length > 0 && { adjustable }),
    ...(wet !== undefined && { wet }),
    ...(skinCovered !== undefined && { skinCovered }),
    ...(p.found && { found: p.found }),
  };
}

/** A line was written, or `line none`; undefined where nobody said. */
function linesOf(client: Thing | undefined): boolean | undefined {
  const lines = client?.values["line"];
  return Array.isArray(lines) ? lines.some((l) => l !== "none") : undefined;
}

/** Whether a height can be set; undefined where nobody said. */
function adjustsOf(thing: Thing | undefined): boolean | undefined {
  const adjusts = thing?.values["adjusts"];
  return adjusts === "no" ? false : isQuantity(adjusts) ? true : undefined;
}

type SeatSetup = Pick<StepSetup, "legrests" | "armrests" | "footplates" | "brakes">;

/** The wheelchair; or a seat that stands in its place, which has arms, and castors or legs, and no leg rests. */
function seatSetup(seat: Thing | undefined): SeatSetup {
  if (seat && seat.kind !== "wheelchair") {
    const arms = armsOf(seat);
    const kind = (k: SurfaceArmKind | undefined): ArmrestKind | undefined =>
      k === "flip-up" ? "flip-back" : k;
    const [left, right] = [kind(arms.left), kind(arms.right)];
    const castors = seat.kind === "commode" ? word(seat.values["castors"]) : "none";
    return {
      legrests: { left: "none", right: "none" },
      armrests: { ...(left && { left }), ...(right && { right }) },
      ...(castors && { brakes: castors === "none" ? "no-wheels" : "both" }),
    };
  }
  const footplates = word(seat?.values["footplates"]);
  const brakes = word(seat?.values["brakes"]) as StepSetup["brakes"];
  return {
    legrests: perSide(seat, "legrest") as BySide<LegRestKind>,
    armrests: perSide(seat, "armrest") as BySide<ArmrestKind>,
    ...((footplates === "fixed" || footplates === "flip-up") && { footplates }),
    ...(brakes && { brakes }),
  };
}

/** The arms of something that is sat on: the sides that have one, by its kind, and `none` on the others. */
function armsOf(thing: Thing): BySide<SurfaceArmKind> {
  const arms = word(thing.values["arms"]);
  if (arms === undefined) return {};
  const kind = word(thing.values["arms-kind"]) as SurfaceArmKind | undefined;
  const of = (side: Side): SurfaceArmKind | undefined => (arms === side || arms === "both" ? kind : "none");
  const [left, right] = [of("left"), of("right")];
  return { ...(left && { left }), ...(right && { right }) };
}

/** The kind of leg rest or armrest on each side: said for one side, else for both. */
export function perSide(chair: Thing | undefined, one: "legrest" | "armrest"): BySide<string> {
  const both = word(chair?.values[`${one}s`]);
  const said = chair?.values[one];
  const of = (side: Side): string | undefined => {
    for (const v of Array.isArray(said) ? said : [])
      if (parts(v)["side"] === side) return word(parts(v)["kind"]);
    return both;
  };
  const left = of("left");
  const right = of("right");
  return { ...(left && { left }), ...(right && { right }) };
}
