/**
 * What findings of form say. One entry a rule id; a message with a hole left open does not compile.
 * Each names the thing as it was typed, what is wrong, and what to write.
 */
export const says = {
  "form/character": (p: { text: string }) =>
    `"${p.text}" has no meaning here. Free text stands in quotes; a comment starts with #.`,
  "form/invisible-character": (p: { code: string }) =>
    `An invisible character (${p.code}) stands here. It was probably pasted; delete it.`,
  "form/text-not-closed": () =>
    `This text has no closing quote. A text starts and ends with " on the same line.`,
  "form/pounds-sign": (p: { text: string }) => `${p.text}: # starts a comment. Pounds are lb.`,
  "form/date-written-otherwise": (p: { text: string; readings: number }) =>
    p.readings > 1
      ? `"${p.text}" can be read as two dates. Dates are written year-month-day.`
      : p.readings === 1
        ? `"${p.text}": dates are written year-month-day.`
        : `"${p.text}" is no day of the calendar. Dates are written year-month-day.`,
  "form/date-impossible": (p: { text: string }) => `There is no day ${p.text}.`,
  "form/decimal-comma": (p: { text: string }) =>
    `"${p.text}": a comma parts items of a list. Is it a decimal number, or two numbers?`,
  "form/improper-fraction": (p: { text: string }) =>
    `"${p.text}": the upper number is larger than the lower one. Is a blank missing after the whole inches?`,
  "form/fraction-of-nothing": (p: { text: string }) => `"${p.text}" divides by zero.`,
  "form/inches-over-a-foot": (p: { text: string; count: number; small: string; large: string }) =>
    `"${p.text}": ${p.count} ${p.small} are 1 ${p.large} already. Which of the two is meant?`,
  "form/inches-without-unit": (p: { text: string; number: string }) =>
    `"${p.text}": ${p.number} what? Inches behind feet say in, as in 5 ft 9 in.`,
  "form/number-too-large": (p: { text: string }) =>
    `"${p.text.slice(0, 24)}" has more digits than any tape or scale gives.`,
  "form/brace-without-block": () => `This } closes nothing.`,
  "form/block-not-closed": (p: { what: string }) => `The block "${p.what}" is not closed: its } is missing.`,
  "form/brace-without-kind": () => `A { needs a kind of thing before it, such as bed {.`,
  "form/nested-too-deep": () => `Blocks stand inside blocks too deeply here; what is in them is skipped.`,
  "form/word-expected": (p: { text: string }) =>
    `A line starts with a word of the vocabulary; "${p.text}" is not one.`,
  "form/unknown-word": (p: { word: string; where: string; nearest: string | undefined }) =>
    p.nearest ? `${p.where} has no "${p.word}". Is "${p.nearest}" meant?` : `${p.where} has no "${p.word}".`,
  "form/unknown-choice": (p: { key: string; text: string; choices: string }) =>
    `${p.key}: "${p.text}" is not one of ${p.choices}.`,
  "form/no-unit": (p: { text: string; key: string; likely: string }) =>
    `${p.key}: "${p.text}" has no unit. ${p.likely}?`,
  "form/wrong-dimension": (p: { text: string; key: string; wants: string; is: string }) =>
    `${p.key} is a ${p.wants}; "${p.text}" is a ${p.is}.`,
  "form/value-missing": (p: { key: string; wants: string }) =>
    `${p.key}: ${p.wants} is missing. If it must still be found out, write unknown.`,
  "form/value-expected": (p: { key: string; wants: string; text: string }) =>
    `${p.key}: ${p.wants} is expected here, not "${p.text}".`,
  "form/left-over": (p: { key: string; text: string }) =>
    `${p.key}: "${p.text}" is left over; nothing is expected here.`,
  "form/given-twice": (p: { key: string; where: string; line: number }) =>
    `${p.key} is given twice in ${p.where} (also on line ${p.line}). Keep the one that is right, or give each its date.`,
  "form/value-jumped": (p: { key: string; where: string; was: string; is: string; on: string }) =>
    `${p.key} of ${p.where} was ${p.was} on ${p.on} and is ${p.is} now: more than reading a tape can explain. The newer value counts. Say why, or measure again.`,
  "form/measure-both": (p: { key: string; other: string; where: string; why: string }) =>
    `${p.where} says ${p.key} and not ${p.other}. ${p.why} Measure both.`,
  "form/one-of-these": (p: { key: string; other: string; where: string; line: number }) =>
    `${p.where} says both ${p.key} and ${p.other} (line ${p.line}); only one of them can be.`,
  "form/range-without-reason": (p: { text: string }) =>
    `"${p.text}" is a range. Can it be adjusted (adjusts), or is it not known better (about)?`,
  "form/range-reversed": (p: { text: string }) => `"${p.text}": the first value is larger than the second.`,
  "form/negative": (p: { key: string; text: string }) => `${p.key} cannot be less than nothing: "${p.text}".`,
  "form/hardly-plausible": (p: { key: string; text: string }) =>
    `${p.key}: ${p.text} is unusual for a home. Is it right?`,
  "form/who-judged": (p: { key: string }) => `${p.key}: judged by whom? Add by and the role, in quotes.`,
  "form/stated-by-nobody": (p: { key: string }) =>
    `${p.key}: stated where? A person has no label. Who judged it?`,
  "form/name-missing": (p: { kind: string }) =>
    `This ${p.kind} has no name. A name follows the word: ${p.kind} NAME.`,
  "form/name-not-allowed": (p: { text: string }) =>
    `"${p.text}" cannot be a name: it starts with a letter and is neither a unit nor one of the small words.`,
  "form/name-used-twice": (p: { name: string; line: number; file: string | undefined }) =>
    `"${p.name}" is already declared${p.file ? ` in ${p.file}` : ""} on line ${p.line}.`,
  "form/unknown-name": (p: { name: string; what: string; nearest: string | undefined }) =>
    `There is no ${p.what} called "${p.name}"${p.nearest ? `. Is "${p.nearest}" meant?` : "."}`,
  "form/name-ambiguous": (p: { name: string; what: string; among: string }) =>
    `There are several called "${p.name}" (${p.what}). Which one: ${p.among}?`,
  "form/no-such-wall": (p: { wall: string; where: string; walls: number }) =>
    `The walk of ${p.where} has ${p.walls} walls; there is no wall ${p.wall}.`,
  "form/change-not-read": (p: { name: string }) =>
    `What may change about ${p.name}? Write a value (${p.name}.KEY 17 in to 23 in), instead-of and the other thing, moved, or removed.`,
  "form/block-twice": (p: { kind: string; where: string; line: number }) =>
    `${p.where} holds two blocks "${p.kind}" (also on line ${p.line}).`,
  "form/block-not-here": (p: { kind: string; where: string }) =>
    `A block "${p.kind}" cannot stand in ${p.where}.`,
  "form/block-needs-braces": (p: { kind: string }) =>
    `${p.kind} is a block: what belongs to it stands in { }.`,
  "form/key-missing": (p: { key: string; where: string; help: string }) =>
    `${p.where} does not say ${p.key}: ${p.help}`,
  "form/longer-across": (p: { text: string }) =>
    `"${p.text}": longer across than along? Size is width by length.`,
  "form/unknown-step": (p: { text: string; nearest: string | undefined }) =>
    p.nearest ? `No step is called "${p.text}". Is "${p.nearest}" meant?` : `No step is called "${p.text}".`,
  "form/file-not-found": (p: { path: string }) => `There is no file "${p.path}" beside this one.`,
  "form/file-outside": (p: { path: string }) =>
    `"${p.path}" lies outside this folder of plans. Only files inside it can be used.`,
  "form/file-circular": (p: { path: string }) => `"${p.path}" uses this file again, in a circle.`,
  "form/file-unreadable": (p: { path: string; why: string }) => `"${p.path}" cannot be read: ${p.why}.`,
  "form/nothing-called": (p: { name: string; path: string; nearest: string | undefined }) =>
    `"${p.path}" declares nothing called "${p.name}"${p.nearest ? `. Is "${p.nearest}" meant?` : "."}`,
  "form/empty": () => `Nothing is written here yet. A plan starts with setup "..." and a client { }.`,
  "form/not-text": (p: { what: string }) => `This file holds ${p.what}; it is not a plain text.`,
  "form/too-large": (p: { size: string }) =>
    `This file is too large (${p.size}) to be a home plan; it was not read.`,
  "form/rule-set-missing": (p: { name: string; known: string }) =>
    `There is no rule set ${p.name}. There is: ${p.known}.`,
  "form/rule-set-not-pinned": (p: { using: string }) =>
    `No rule set is named. ${p.using} is used; add a line rules ${p.using} so that the answer stays the same.`,
  "form/rule-set-newer": (p: { newer: string; using: string; what: string }) =>
    `There is a newer rule set, ${p.newer}; this plan names ${p.using}. ${p.what}`,
  "form/policy-missing": (p: { path: string; why: string }) =>
    `The policy "${p.path}" cannot be used, so no rule was applied: ${p.why}.`,
  "form/policy-refused": (p: { path: string; first: string; more: string }) =>
    `The policy "${p.path}" cannot be used, so no rule was applied. ${p.first}${p.more}`,
  "form/policy-not-named": (p: { path: string }) =>
    `This folder of plans has a policy, ${p.path}, and this plan does not name it: its rules were applied without it.`,
  "form/side-contradicts": (p: { said: string; other: string; line: number }) =>
    `${p.said} contradicts ${p.other} on line ${p.line}.`,
  "form/side-unfit": (p: { key: string; surface: string; fits: string }) =>
    `${p.key} does not fit ${p.surface}: there it is called ${p.fits}.`,
  "form/facing-unfit": (p: { facing: string; surface: string; fits: string }) =>
    `facing ${p.facing} does not fit ${p.surface}: there it is ${p.fits}.`,
  "form/personal-data": (p: { what: string; text: string }) =>
    `"${p.text}" looks like ${p.what}. Plans hold codes and roles, not people's names.`,
} as const;

export type FormRule = keyof typeof says;

/** Findings of form that need not be mended before a plan can be relied on. */
export const notices: ReadonlySet<string> = new Set<FormRule>([
  "form/hardly-plausible",
  "form/personal-data",
  "form/key-missing",
  "form/rule-set-not-pinned",
  "form/rule-set-newer",
  "form/longer-across",
  "form/value-jumped",
  "form/measure-both",
  "form/empty",
]);
