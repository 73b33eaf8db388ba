import type { InitializeResult } from "vscode-languageclient";

/** What the status area says. */
export interface Announcement {
  readonly text: string;
  readonly detail: string;
  readonly busy?: boolean;
  readonly stopped?: boolean;
}

interface RuleSetName {
  readonly name: string;
  readonly version: string;
}

/**
 * Says that the checks are alive, with which rule sets. The server names them in
 * `capabilities.experimental.ruleSets`; a server that names none is said to have none.
 */
export function announcement(result: InitializeResult | undefined): Announcement {
  const version = result?.serverInfo?.version;
  const experimental = result?.capabilities.experimental as { ruleSets?: RuleSetName[] } | undefined;
  const sets = (experimental?.ruleSets ?? []).map((set) => `${set.name} ${set.version}`);
  return {
    text: sets.length > 0 ? `Spanwise checks with ${sets.join(", ")}` : "Spanwise has no rule set",
    detail: version ? `Spanwise ${version}` : "Spanwise",
  };
}
