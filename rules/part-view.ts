/** Parts of a value as a thing of its own, so that each can be read as an interval. */
import type { Thing } from "../language/model/types.js";
import { whoOf } from "./who.js";

/** A value in several parts (`size 39 in by 80 in`, one item of `walk`), whose place is that of its key in the thing that holds it. */
export interface PartView extends Thing {
  /** The thing in which the value now stands: a block may be read anew while the value stays the same. */
  whole: Thing;
}

const views = new WeakMap<object, Map<string, PartView[]>>();

/**
 * One view for each value and the thing in which it stands: things with the same line in them may share its value, and two of the
 * same name may stand in one block. A view goes on with its thing when the block is read anew.
 */
export function viewOf(value: object, whole: Thing, key: string): PartView {
  let ofValue = views.get(value);
  if (!ofValue) views.set(value, (ofValue = new Map<string, PartView[]>()));
  const who = whoOf(whole);
  let all = ofValue.get(who);
  if (!all) ofValue.set(who, (all = []));
  const { entry, node } = whole;
  let view =
    all.find((v) => v.whole === whole) ?? all.find((v) => v.whole.entry !== entry || v.whole.node === node);
  if (!view) {
    const made: PartView = {
      whole,
      kind: whole.kind,
      name: whole.name,
      values: value as Thing["values"],
      inner: {},
      entry,
      node,
      placeOf: () => made.whole.placeOf(key),
    };
    all.push((view = made));
  }
  view.whole = whole;
  return view;
}

export const isPartView = (thing: Thing): thing is PartView => "whole" in thing;
