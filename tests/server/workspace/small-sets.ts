/** A small rule set in two versions, a plan and a policy, as texts for a folder of plans. */
const rules = (
  version: string,
  level: string,
  more = "",
): string => `ruleset trial ${version} { title "A set for tests"; caution "Try it with a therapist." }
rule bed/rails { title "Rails up"; for each transfer; require surface.rails is none else ${level} "Rails of {surface} are up"
  because "b"; common-practice "c"; examples { surface.rails none: holds; surface.rails both: fails } }
rule chair/brakes { title "Brakes on one wheel"; for each transfer; require chair.brakes is both else caution "One brake only"
  because "b"; common-practice "c"; examples { chair.brakes both: holds; chair.brakes left: fails } }
${more}`;

/** `trial 1` and `trial 2`; in the second a rail is a stop. */
export const rulesFolder = {
  "rules/trial/1/set.spanrules": rules("1", "caution"),
  "rules/trial/2/set.spanrules": rules(
    "2",
    "stop",
    'changes { bed/rails "A rail between two seats stops every slide" }\n',
  ),
};

/** The rails are up, and both wheels are locked; `more` stands behind the rule set. */
export const planUnder = (more: string, version = "1"): string => `setup "A test"
rules trial ${version} ${more}
client { code c-1 }
wheelchair chair { brakes both }
bed bed { rails left }
transfer into-bed { from chair to bed; bed-side left }
`;

export const policyOf = (text: string): string =>
  `policy clinic { title "Policy of a clinic"; for trial 1; by "clinical lead" }\n${text}\n`;
