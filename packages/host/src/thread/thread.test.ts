import { expect, it, onTestFinished } from 'vitest';
import { createThread, TooMuchError } from './thread.ts';

/** A thread that does as it is told: answers, never ends, takes memory without end, or breaks. */
const OBEDIENT = new URL(
  `data:text/javascript,${encodeURIComponent(`
    import { parentPort } from 'node:worker_threads';
    const all = [];
    parentPort.on('message', (told) => {
      if (told === 'hang') for (;;);
      if (told === 'fill') for (;;) all.push(Array.from({ length: 100000 }, () => ({})));
      if (told === 'grow') for (;;) all.push(Buffer.alloc(2 ** 20, 1));
      if (told === 'end') process.exit();
      if (told === 'surroundings') return parentPort.postMessage(process.env.SHEDBOOK_TEST_TOLD ?? 'nothing');
      if (told === 'break') throw new Error('broken on purpose');
      parentPort.postMessage(told);
    });
  `)}`,
);

function thread() {
  const made = createThread<string, string>(OBEDIENT, { memoryBytes: 64 * 2 ** 20 });
  onTestFinished(() => made.close());
  return made;
}

const LONG_MS = 100_000;
const terms = (of: string) => ({ of, deadlineMs: LONG_MS });

it('[HO4000] gives up what takes too long or too much memory, and goes on with the next', async () => {
  const { ask } = thread();
  await ask('warm', terms('a'));
  await expect(ask('hang', { of: 'a', deadlineMs: 300 })).rejects.toThrow(TooMuchError);
  expect(await ask('one', terms('a'))).toBe('one');
  await expect(ask('fill', terms('a'))).rejects.toThrow(TooMuchError);
  await expect(ask('break', terms('a'))).rejects.toThrow('broken on purpose');
  await expect(ask('end', terms('a'))).rejects.toThrow('the thread ended');
  expect(await ask('two', terms('a'))).toBe('two');
});

it('[HO4000] counts the time of the processor and the memory outside of objects where that is asked for', async () => {
  const { ask } = thread();
  const limits = { processorMs: LONG_MS, grownBytes: 2 ** 40 };
  const within = (process: Partial<typeof limits>) => ({ ...terms('a'), process: { ...limits, ...process } });
  await expect(ask('hang', within({ processorMs: 300 }))).rejects.toThrow(TooMuchError);
  await expect(ask('grow', within({ grownBytes: 2 ** 27 }))).rejects.toThrow(TooMuchError);
  expect(await ask('one', within({}))).toBe('one');
});

it('[HO4000] serves next whoever was served longest ago', async () => {
  const { ask } = thread();
  const order: string[] = [];
  const asked = ['a 1', 'a 2', 'a 3', 'b 1', 'c 1', 'b 2'].map(async (each) => {
    await ask(each, terms(each.charAt(0)));
    order.push(each);
  });
  await Promise.all(asked);
  // definition: in turns, each one's own orders in their order
  expect(order).toEqual(['a 1', 'b 1', 'c 1', 'a 2', 'b 2', 'a 3']);
});

it('[HO4000] does not begin what nobody waits for, and ends it where that is asked for', async () => {
  const { ask } = thread();
  const [running, queued] = [new AbortController(), new AbortController()];
  const first = ask('hang', { ...terms('a'), signal: running.signal, endsWhenLeft: true });
  const second = ask('hang', { ...terms('b'), signal: queued.signal });
  const third = ask('three', terms('c'));
  queued.abort();
  running.abort();
  await expect(first).rejects.toThrow('nobody waits');
  await expect(second).rejects.toThrow('nobody waits');
  expect(await third).toBe('three');
});

it('[HO8100] has the surroundings of its program as they are when it is asked, and not as it started', async () => {
  const { ask } = thread();
  expect(await ask('surroundings', terms('a'))).toBe('nothing');
  process.env['SHEDBOOK_TEST_TOLD'] = 'something';
  onTestFinished(() => {
    delete process.env['SHEDBOOK_TEST_TOLD'];
  });
  // standard: Node's worker_threads, `SHARE_ENV`
  expect(await ask('surroundings', terms('a'))).toBe('something');
});
