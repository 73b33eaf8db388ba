/** The released rule sets as text; filled in by `rule-sets.plugin.mjs`. */
declare module "virtual:rule-sets" {
  interface EmbeddedRuleSet {
    /** Folder under `rules/`, such as `home-transfer`. */
    readonly name: string;
    /** Folder of the version, such as `2026.1`. */
    readonly version: string;
    /** In the order of their paths; a path is relative to `rules/` and has slashes. */
    readonly files: readonly { readonly path: string; readonly text: string }[];
    /** As `contentHash` works it out from the files: in what is built, not in tests. */
    readonly hash?: string;
    /** The set as `packRuleSet` writes it: in what is built, not in tests. */
    readonly packed?: { readonly set: string; readonly examples: string };
  }
  /** Ordered by name, then version. */
  const sets: readonly EmbeddedRuleSet[];
  export default sets;
}
