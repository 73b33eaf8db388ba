/** Words of the rule language as people say them. */
import type { Extent, SourceKind } from "../../rules/engine/types.js";

export const extentInWords = (extent: Extent): string =>
  ({
    whole: "the whole of it",
    part: "in part",
    abstract: "the abstract only",
    "through-another": "as another text quotes it",
  })[extent];

export const sourceKindInWords = (kind: SourceKind): string =>
  ({ standard: "a standard", law: "a law", study: "a study", handbook: "a handbook", guidance: "guidance" })[
    kind
  ];
