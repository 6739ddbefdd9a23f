import { describe, expect, it } from 'vitest';
import { killAgainAndAgain } from '../../../internal/testing/kills.mjs';
import { mutatedTokens } from '../../../internal/testing/mutated-tokens.mjs';
import { temporaryFolder } from '../test/temporary.ts';
import { createLinkStore } from './store/links.ts';
import { openDatabase } from './store/open.ts';
import { createSignInStore } from './store/sign-in.ts';
import { createStudentStore } from './store/students.ts';
import { createDoor } from './week/door.ts';

const clock = () => new Date('2026-11-29T10:00:00Z');

describe('private links', () => {
  it('[SE1611] open for none of 10,000 secrets that are nearly right, each from an address of its own', async () => {
    const database = openDatabase(temporaryFolder());
    const students = createStudentStore(database, clock);
    const links = createLinkStore(database, clock);
    const tokens: string[] = [];
    for (const name of ['Bram', 'Ifeoma']) {
      const { id } = await students.create(name);
      tokens.push((await links.make(id, 'en'))?.token ?? '');
    }
    const door = createDoor(links, students, () => 0);
    const open = async (token: string, ip: string) => (await door(token, ip)).kind;
    for (const token of tokens) expect(await open(token, 'home')).toBe('open');
    const opened: string[] = [];
    for (const [n, token] of mutatedTokens(tokens, 10_000, 7).entries())
      if ((await open(token, `address ${n}`)) === 'open') opened.push(token);
    expect(opened).toEqual([]);
    await database.destroy();
  }, 60_000);

  it('[SE3008] a session is held by none of 10,000 cookies that are nearly right, nor by a link', async () => {
    const database = openDatabase(temporaryFolder());
    const students = createStudentStore(database, clock);
    const links = createLinkStore(database, clock);
    const signIn = createSignInStore(database, clock);
    const passphrase = 'brushes on a coated head';
    await signIn.set(passphrase);
    const tokens: string[] = [];
    for (let count = 0; count < 2; count += 1) tokens.push((await signIn.signIn(passphrase)) ?? '');
    for (const token of tokens) expect(await signIn.isIn(token)).toBe(true);
    const held: string[] = [];
    for (const token of mutatedTokens(tokens, 10_000, 11)) if (await signIn.isIn(token)) held.push(token);
    expect(held).toEqual([]);
    // what opens the one opens not the other
    const { id } = await students.create('Kaito');
    const link = (await links.make(id, 'en'))?.token ?? '';
    expect(await signIn.isIn(link)).toBe(false);
    expect(await links.open(tokens[0] ?? '')).toBeNull();
    // passphrases that are nearly right, too
    for (const wrong of [
      `${passphrase} `,
      ` ${passphrase}`,
      passphrase.toUpperCase(),
      passphrase.slice(0, -1),
      '',
    ])
      expect(await signIn.signIn(wrong), wrong).toBeNull();
    await database.destroy();
  }, 60_000);

  it('[SE1612] loses nothing and doubles nothing that it acknowledged when it is killed again and again', async () => {
    const { broken, rows, takes, heard } = await killAgainAndAgain(temporaryFolder(), 2, 7);
    expect(broken).toEqual([]);
    expect([rows > 2, takes > 0, heard > 0]).toEqual([true, true, true]);
  }, 120_000);
});
