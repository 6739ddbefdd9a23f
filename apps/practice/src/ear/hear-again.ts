/**
 * Hears once more what was recorded before the page was closed, by the same ear that hears what is played.
 *
 * Conventions: seconds and frames of the audio context that it was recorded on.
 */
import type { KitNote } from '../device/midi-clock.ts';
import type { EarAsked, EarOrder, EarReport, LoopTime } from './ear-messages.ts';
import { startEarThread } from './ear-thread.ts';
import { fromPcm } from './pcm.ts';

/** What was recorded. */
export interface Recorded {
  readonly asked: EarAsked;
  readonly latencySeconds: number;
  /** The rounds that were played to their end. */
  readonly loops: readonly LoopTime[];
  readonly sound: readonly Int16Array<ArrayBuffer>[];
  readonly notes: readonly KitNote[];
}

/** Something that the ear is told, and when it was true. */
interface Told {
  readonly seconds: number;
  readonly order: EarOrder;
}

/** A round is known of so long before it begins, in seconds, as it is while one plays. */
const AHEAD_SECONDS = 1;

/** After the last sound so long everything is over, in seconds. */
const OVER_SECONDS = 10;

function blocksOf({ asked, sound }: Recorded): readonly Told[] {
  const { originSeconds, sampleRateHz } = asked;
  if (sampleRateHz === null) return [];
  let frame = Math.round(originSeconds * sampleRateHz);
  return sound.map((piece) => {
    const block = { frame, samples: fromPcm(piece) };
    frame += piece.length;
    return { seconds: block.frame / sampleRateHz, order: { kind: 'block', block } };
  });
}

/** Everything that an ear was told, in the order in which it was. */
export function ordersOf(recorded: Recorded): readonly EarOrder[] {
  const { asked, latencySeconds, loops, notes } = recorded;
  const told: readonly Told[] = [
    ...loops.map((loop) => ({
      seconds: loop.startSeconds - AHEAD_SECONDS,
      order: { kind: 'loop' as const, loop },
    })),
    ...blocksOf(recorded),
    ...notes.map((note) => ({ seconds: note.seconds, order: { kind: 'note' as const, note } })),
  ];
  const end = Math.max(asked.originSeconds, ...loops.map(({ endSeconds }) => endSeconds));
  return [
    { ...asked, latencySeconds },
    ...told.toSorted((a, b) => a.seconds - b.seconds).map(({ order }) => order),
    { kind: 'finish' },
    { kind: 'time', seconds: end + OVER_SECONDS },
  ];
}

type TakeHeard = Extract<EarReport, { kind: 'take' }>;

/** The take of it, or null where the thread that listens did not come. */
export function hearAgain(recorded: Recorded): Promise<TakeHeard | null> {
  return new Promise((resolve) => {
    const end = (take: TakeHeard | null) => {
      thread.terminate();
      resolve(take);
    };
    const hear = (report: EarReport) => {
      if (report.kind === 'take') end(report);
    };
    const thread = startEarThread('reports', hear, () => end(null));
    for (const order of ordersOf(recorded)) thread.postMessage(order);
  });
}
