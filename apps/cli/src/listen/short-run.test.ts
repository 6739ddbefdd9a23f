import { execFileSync } from 'node:child_process';
import { expect, it } from 'vitest';
import { runProgram } from '../program.ts';
import { flagsFor } from './short-run.ts';

it('[CL8400] V8 is told how long a command runs before it does anything, in words that it knows', async () => {
  // library: V8 lists the flags that it knows, each with its type on the next line
  const known = execFileSync(process.execPath, ['--v8-options'], { encoding: 'utf8' });
  for (const flag of flagsFor('listen'))
    expect(known).toMatch(new RegExp(`${flag.split('=')[0]} .*\\n +type: int `));
  // the V8 of Node 20, and that of Node 22, which says `unrecognized flag` on the terminal
  expect(flagsFor('listen', '11.3.244.8-node.33')).toHaveLength(1);
  expect(flagsFor('listen', '12.4.254.21-node.33')).toEqual([]);
  expect(flagsFor('serve')).toEqual([]);

  const said: string[] = [];
  const say = (line: string) => void said.push(line);
  const settle = (command: string) => void said.push(`settled for ${command}`);
  const terminal = { say, warn: say, progress: () => {} };
  await runProgram(['listen', 'none.wav', '--lesson', 'none.lesson.yaml'], terminal, { settle });
  expect(said[0]).toBe('settled for listen');
  expect(said[1]).toContain('none.lesson.yaml');
});
