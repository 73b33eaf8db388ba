/**
 * Where a board is best laid, chosen at nominal values. Symbols as in `board.ts`.
 */
/** What a placement is chosen by: nominal values. Undefined `window`: nothing of the wheel is at the board's height. */
export interface Choosing {
  readonly turned: number;
  /** Gap beside the seat's front corner. */
  readonly gapFront: number;
  readonly length: number;
  readonly width: number;
  readonly depth: number;
  readonly half: number;
  readonly window: number | undefined;
  /** How far the wheel reaches from the seat's side. */
  readonly outward: number;
  /** Asked between board and wheel. */
  readonly clear: number;
  /** Hip joint ahead of the seat's rear edge, as the client sits when the board is placed. */
  readonly hip: number;
  readonly bone: number;
  readonly asked: number;
  readonly setbackSeat: number;
  readonly setbackLanding: number;
  /** As it was laid, where that is written. */
  readonly angle?: number;
  readonly inside?: number;
}

export interface Chosen {
  readonly angle: number;
  readonly inside: number;
  readonly back: number;
  /** The smaller of (firm bearing - asked) at both ends. */
  readonly margin: number;
  /** By how much the board is too near to the wheel or too wide for the side window; 0 where it fits. */
  readonly short: number;
  readonly span: number;
}

/** Placements whose merits differ by less are equally good: 1/4 in, half of what a hand lays a board to. */
const equally = 0.00635;
/**
 * Bearing beyond what is asked is worth having up to here, 2 in at each end. Past it a board lies no better for bearing more,
 * and the least askew is taken: a board square to the bed spans less and does not carry the hips along the edge.
 */
const ample = 0.0508;
const degree = Math.PI / 180;

function tryAngle(c: Choosing, phi: number): Chosen {
  const psi = phi + c.turned;
  const cosPsi = Math.cos(psi);
  const tanPsi = Math.sin(psi) / cosPsi;
  const sinPsi = Math.abs(tanPsi * cosPsi);
  const cosPhi = Math.cos(phi);
  const tanPhi = Math.abs(Math.sin(phi)) / cosPhi;
  const sinT = Math.sin(c.turned);
  const half = c.width / 2;
  // Under the hip, as far back as the wheel allows, its front side not past the seat's front corner. If the side window is too
  // narrow for that the board keeps to the front corner and is short of room at the wheel.
  const wanted = c.depth - c.hip - (c.half - c.bone) * tanPsi;
  const front = half / cosPsi;
  const outer = psi < 0 ? Math.max(0, c.outward) * -tanPsi : 0;
  const rear = c.window === undefined ? c.depth - front : c.window - (c.clear + half) / cosPsi - outer;
  const back = Math.max(front, Math.min(rear, wanted));
  const gap = c.gapFront + back * sinT;
  const along = c.length - gap / cosPhi - half * tanPhi;
  const skew = half * sinPsi;
  // Square bearings: inside - skew on the seat, (along - inside / cos psi) cos phi on the landing. They are level at:
  const level = (along * cosPhi - c.setbackLanding + skew + c.setbackSeat) / (1 + cosPhi / cosPsi);
  const inside = c.inside ?? Math.min(c.half, Math.max(0, c.half - c.bone, level));
  return {
    angle: phi,
    inside,
    back,
    margin:
      Math.min(inside - skew - c.setbackSeat, (along - inside / cosPsi) * cosPhi - c.setbackLanding) -
      c.asked,
    short: Math.max(0, (back - rear) * cosPsi),
    span: gap / cosPhi + (half * Math.abs(sinT)) / (cosPhi * cosPsi),
  };
}

/**
 * The best placement: it fits in front of the wheel, its inner end lies under the near sitting bone and not past the client's
 * midline, and the smaller of (bearing - asked) at both ends is greatest, or ample. If nothing fits in front of the wheel, what is short
 * there is made least first. Of placements equally good the least askew is taken, then the one with the least span, then the
 * one that points forward.
 */
export function place(c: Choosing, step = 2 * degree): Chosen {
  if (c.angle !== undefined) return tryAngle(c, c.angle);
  const limit = 60 * degree;
  const tried: Chosen[] = [];
  const count = Math.round(limit / step);
  for (let n = -count; n <= count; n++) {
    const angle = n * step;
    if (Math.abs(angle + c.turned) <= limit) tried.push(tryAngle(c, angle));
  }
  if (tried.length === 0) return tryAngle(c, -c.turned);
  let short = Infinity;
  for (const p of tried) short = Math.min(short, p.short);
  let margin = -Infinity;
  for (const p of tried) if (p.short <= short + equally) margin = Math.max(margin, Math.min(ample, p.margin));
  let chosen: Chosen | undefined;
  for (const p of tried) {
    if (p.short > short + equally || p.margin < margin - equally) continue;
    const nearer = chosen ? Math.abs(p.angle) - Math.abs(chosen.angle) : -1;
    const span = chosen ? p.span - chosen.span : -1;
    if (nearer < -1e-9 || (nearer < 1e-9 && (span < -1e-9 || (span < 1e-9 && p.angle > chosen!.angle))))
      chosen = p;
  }
  return chosen!;
}
