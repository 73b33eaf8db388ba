/** What the features ask of the rules, gathered from a check. */
import type { Scene } from "../../rules/scene.js";
import type { CheckResult } from "../../rules/engine/check.js";
import type { Allowed, PlanOptions } from "../../rules/steps/plan.js";
import type { Computed } from "../../rules/types.js";
import type { Snapshot, Workspace } from "../workspace/snapshot.js";

export interface RulesOfSteps {
  readonly allowed: Allowed;
  readonly options: PlanOptions;
}

export function quantitiesOf(result: CheckResult | undefined, scene: Scene): readonly Computed[] {
  void scene;
  void result;
  return [];
}

export function allowedFor(_workspace: Workspace, _snapshot: Snapshot, _scene: Scene): RulesOfSteps | undefined {
  return undefined;
}
