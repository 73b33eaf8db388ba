/** The version of the program; the build puts it in. */
declare const SPANWISE_VERSION: string | undefined;

export const version: string = typeof SPANWISE_VERSION === "string" ? SPANWISE_VERSION : "0.0.0";
