import { expect, it } from 'vitest';
import { createPasskeyStore } from '../../src/store/passkeys.ts';
import { createSignInStore } from '../../src/store/sign-in.ts';
import type { TestStore } from '../stores.ts';
import { temporaryFolder } from '../temporary.ts';

/** Passkeys, in whichever database they lie. */
export function passkeysSuite({ open }: TestStore): void {
  it('[SE7409] has a question answered once, in time, by whoever was asked, and forgets a passkey with its passphrase', async () => {
    const database = await open(temporaryFolder());
    let now = Date.parse('2026-11-30T11:00:00Z');
    const clock = () => new Date(now);
    const passkeys = createPasskeyStore(database, clock);
    for (const [challenge, of] of [
      ['signing in', null],
      ['adding', 'first'],
      ['late', null],
    ] as const)
      await passkeys.ask(challenge, of);
    expect(await passkeys.answered('never asked', null)).toBe(false);
    expect(await passkeys.answered('adding', null)).toBe(false);
    expect(await passkeys.answered('adding', 'another')).toBe(false);
    expect([await passkeys.answered('adding', 'first'), await passkeys.answered('adding', 'first')]).toEqual([
      true,
      false,
    ]);
    expect(await passkeys.answered('signing in', null)).toBe(true);
    now += 5 * 60_000 + 1;
    expect(await passkeys.answered('late', null)).toBe(false);
    const publicKey = Uint8Array.of(1, 0, 255);
    const passkey = { id: 'a-device', teacher: 'first', publicKey, counter: 3 };
    expect([await passkeys.add(passkey), await passkeys.add({ ...passkey, teacher: 'another' })]).toEqual([
      true,
      false,
    ]);
    expect(await passkeys.read('a-device')).toEqual(passkey);
    await passkeys.used('a-device', 4);
    expect(await passkeys.of('first')).toEqual([
      { id: 'a-device', madeAt: clock().toISOString(), usedAt: clock().toISOString() },
    ]);
    expect([await passkeys.remove('a-device', 'another'), await passkeys.areAny()]).toEqual([false, true]);
    await createSignInStore(database, clock).set('brushes on a coated head');
    expect(await passkeys.read('a-device')).toBeNull();
    await database.destroy();
  });
}
