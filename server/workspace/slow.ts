/**
 * Works out what takes longer than a keystroke in a thread of its own, so that no letter waits for it. The thread is started by the
 * first job and kept; one that is busy with a text that is already gone is ended.
 */
import { parentPort, Worker } from "node:worker_threads";
import { knownWays, learnWays, type KnownWay } from "../../rules/quantities/reach.js";
import { Workspace } from "./snapshot.js";

/** A plan as it stands, with every other text that an editor holds. */
export interface SlowJob {
  readonly roots: readonly string[];
  readonly today: string;
  readonly texts: readonly (readonly [file: string, text: string])[];
  readonly file: string;
}

/** The thread's side: one job after the other. To be called by the program's entry where it is not the main thread. */
export function serveSlowWork(): void {
  parentPort?.on("message", (job: SlowJob) => {
    parentPort!.postMessage(workOut(job));
  });
}

/** What the program's own thread does where there is no other: the same work, at once. */
export function workOut(job: SlowJob): readonly KnownWay[] {
  const workspace = new Workspace({ roots: job.roots, today: () => job.today });
  for (const [file, text] of job.texts) workspace.open(file, text);
  void workspace.snapshot(job.file).result;
  return knownWays();
}

export class SlowWork {
  private worker: Worker | undefined;
  private busy: ((done: boolean) => void) | undefined;

  /** `entry`: the bundled program, which calls `serveSlowWork` when it finds itself in the thread. Undefined: there is no thread. */
  constructor(private readonly entry: URL | undefined) {}

  /** Works the job out. True: what was found is known now. False: it was given up, or the thread failed; then nothing is known. */
  async start(job: SlowJob): Promise<boolean> {
    this.stop();
    if (!this.entry) {
      learnWays(workOut(job));
      return true;
    }
    const worker = (this.worker ??= this.begin(this.entry));
    return new Promise((resolve) => {
      this.busy = resolve;
      worker.postMessage(job);
    });
  }

  /** Gives up the job in hand, if there is one. */
  stop(): void {
    const busy = this.busy;
    if (!busy) return;
    this.busy = undefined;
    void this.worker?.terminate();
    this.worker = undefined;
    busy(false);
  }

  private begin(entry: URL): Worker {
    const worker = new Worker(entry, { stdout: true });
    const end = (known: boolean): void => {
      if (this.worker !== worker) return;
      const busy = this.busy;
      this.busy = undefined;
      busy?.(known);
    };
    worker.on("message", (found: readonly KnownWay[]) => {
      learnWays(found);
      end(true);
    });
    worker.on("error", () => {
      end(false);
      if (this.worker === worker) this.worker = undefined;
    });
    // A thread that waits for work must not keep the program alive.
    worker.unref();
    return worker;
  }
}
