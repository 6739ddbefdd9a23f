/** Gives inputs to child processes and counts what becomes of them, each under a limit of processor time and memory. */
import { fork } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const CHILD = fileURLToPath(new URL('child.mjs', import.meta.url));

/** Seconds of the processor that one input may take, and megabytes that a process may hold. */
export const LIMITS = { cpuSeconds: 5, memoryMb: 500 };

/** Ticks of the processor's time a second. Source: Linux, sysconf(_SC_CLK_TCK). */
const TICKS = 100;

/** Processor time of a process, in seconds; the wall's where the system does not say. */
function cpuSeconds(pid) {
  try {
    const fields = readFileSync(`/proc/${pid}/stat`, 'latin1').split(') ')[1]?.split(' ') ?? [];
    return (Number(fields[11]) + Number(fields[12])) / TICKS;
  } catch {
    return performance.now() / 1000;
  }
}

function start() {
  return new Promise((resolve, reject) => {
    const child = fork(CHILD, [], {
      execArgv: ['--max-old-space-size=480'],
      stdio: ['ignore', 'ignore', 'ignore', 'ipc'],
    });
    child.once('message', (/** @type {{ kinds: string[] }} */ { kinds }) => resolve({ child, kinds }));
    child.once('error', reject);
    child.once('exit', () => reject(new Error('a child did not start')));
  });
}

/** What a child makes of one job: its answer, `hung` or `memory`. */
function readOne(child, job) {
  return new Promise((resolve) => {
    const from = cpuSeconds(child.pid);
    let answer = null;
    const end = (result) => {
      clearInterval(watch);
      child.removeAllListeners('message');
      child.removeAllListeners('exit');
      resolve(result);
    };
    const watch = setInterval(() => {
      const cpu = cpuSeconds(child.pid) - from;
      if (cpu <= LIMITS.cpuSeconds) return;
      child.kill('SIGKILL');
      end({ ...job, outcome: 'hung', cpuMs: cpu * 1000, isDead: true });
    }, 250);
    child.on('message', (said) => {
      if (said.isBeside) {
        answer = said;
        return;
      }
      end(answer ?? said);
    });
    child.once('exit', (code, signal) =>
      end({ ...job, outcome: 'memory', why: `${signal ?? code}`, isDead: true }),
    );
    child.send(job);
  });
}

/**
 * Reads inputs until the time is over or all are read.
 * @param {{ seconds: number, inputs: number, seed: number, processes: number, kinds?: string[] }} budget
 */
export async function readHard({ seconds, inputs, seed, processes, kinds: wanted }) {
  const until = performance.now() + seconds * 1000;
  const results = [];
  let next = 0;
  const work = async () => {
    let { child, kinds } = await start();
    const of = wanted ?? kinds;
    while (next < inputs && performance.now() < until) {
      const at = next;
      next += 1;
      const result = await readOne(child, { kind: of[at % of.length], seed: seed + at });
      const isFull = (result.peakMb ?? 0) > LIMITS.memoryMb;
      results.push(isFull && result.outcome !== 'ours' ? { ...result, outcome: 'memory' } : result);
      if (!result.isDead && !isFull) continue;
      child.kill('SIGKILL');
      ({ child } = await start());
    }
    child.removeAllListeners('exit');
    child.send('end');
  };
  await Promise.all(Array.from({ length: processes }, work));
  return results;
}
