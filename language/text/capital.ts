/** The same words with a capital in front. */
export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
