/** A reason to end a command that a person can act on. Shown as one sentence, without a trace. */
export class Stop extends Error {
  constructor(
    message: string,
    /** 2: nothing could be done. */
    readonly exitCode: number = 2,
  ) {
    super(message);
  }
}
