/** Parts of a value as a thing of its own, so that each can be read as an interval. */
import type { Thing } from "../language/model/types.js";

/** A value in several parts (`size 39 in by 80 in`, one item of `walk`), whose place is that of its key in the thing that holds it. */
export interface PartView extends Thing {
  /** The thing in which the value now stands: a block may be read anew while the value stays the same. */
  whole: Thing;
}

const views = new WeakMap<object, Map<string, PartView>>();

/** One view for each value and the thing in which it stands: two things with the same line in them may share its value. */
export function viewOf(value: object, whole: Thing, key: string): PartView {
  let ofValue = views.get(value);
  if (!ofValue) views.set(value, (ofValue = new Map<string, PartView>()));
  const who = `${whole.kind} ${whole.name}`;
  let view = ofValue.get(who);
  if (!view) {
    const made: PartView = {
      whole,
      kind: whole.kind,
      name: whole.name,
      values: value as Thing["values"],
      inner: {},
      entry: whole.entry,
      node: whole.node,
      placeOf: () => made.whole.placeOf(key),
    };
    ofValue.set(who, (view = made));
  }
  view.whole = whole;
  return view;
}

export const isPartView = (thing: Thing): thing is PartView => "whole" in thing;
