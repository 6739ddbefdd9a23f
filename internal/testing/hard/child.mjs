/**
 * A process that reads hostile inputs one after the other and says what became of each; whoever started it watches its
 * time and ends it. `node child.mjs KIND SEED` reads one and prints it.
 */
import { goodFiles, inputOf } from './kinds.mjs';
import { clearUp, READERS } from './read.mjs';

const good = await goodFiles();

async function readOne(kind, seed) {
  const bytes = inputOf(good, kind, seed);
  const before = process.cpuUsage();
  let result;
  try {
    result = { outcome: await READERS[kind](bytes) };
  } catch (error) {
    result = { outcome: 'ours', why: `${error?.stack ?? error}`.slice(0, 600) };
  }
  const { user, system } = process.cpuUsage(before);
  return {
    kind,
    seed,
    ...result,
    cpuMs: (user + system) / 1000,
    peakMb: process.resourceUsage().maxRSS / 1024,
  };
}

const [, , kind, seed] = process.argv;
if (process.send) {
  // What a library throws outside of any call of ours is ours all the same.
  let at = null;
  for (const event of ['uncaughtException', 'unhandledRejection'])
    process.on(
      event,
      (error) =>
        at &&
        process.send({
          ...at,
          outcome: 'ours',
          why: `${event}: ${error?.stack ?? error}`.slice(0, 600),
          cpuMs: 0,
          peakMb: 0,
          isBeside: true,
        }),
    );
  process.on('message', async (job) => {
    if (job === 'end') {
      clearUp();
      process.exit(0);
    }
    at = job;
    process.send(await readOne(job.kind, job.seed));
  });
  process.send({ kinds: Object.keys(good) });
} else {
  console.log(await readOne(kind, Number(seed)));
  clearUp();
}
