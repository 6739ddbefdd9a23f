/**
 * Passkeys: a device of a teacher's own signs in for them.
 *
 * Conventions: a passkey holds for one address, the one that the server was told others reach it by; without one there
 * are none. The device has to know its owner, by finger, face or code, since a passkey stands for the passphrase.
 * Source: W3C, Web Authentication, Level 2.
 */
import type { AuthenticationResponseJSON, RegistrationResponseJSON } from '@simplewebauthn/server';
import { countAttempts } from '../week/attempts.ts';
import { answer, type Handlers, refuse, teacherOf } from './handlers.ts';
import { passkeyPlace } from './passkey-place.ts';
import { type SessionParts, toldOf } from './session-handlers.ts';

/** Questions that one caller may ask for within a quarter of an hour. */
const LIMITS = { most: 60, withinMs: 15 * 60_000 } as const;

/** Loaded when somebody has a passkey: nobody else waits for it. */
const load = () => import('@simplewebauthn/server');

const NAME = 'Shedbook';

/** What a check comes to; null where the answer of a device is not what it should be. */
async function orNull<Checked>(check: () => Promise<Checked>): Promise<Checked | null> {
  try {
    return await check();
  } catch {
    return null;
  }
}

/** Answers the routes of passkeys. */
export function passkeyHandlers(parts: SessionParts) {
  const { passkeys, signIn, clock } = parts;
  const attempts = countAttempts(LIMITS, clock);
  const none = () => refuse('no-passkeys-here', {});
  const wrong = () => refuse('passkey-refused', {});
  /** What a device's answer is held against. @param teacher who adds a passkey; null for whoever signs in */
  const expected = (teacher: string | null) => {
    const place = passkeyPlace(parts.where);
    return (
      place && {
        expectedChallenge: (challenge: string) => passkeys.answered(challenge, teacher),
        expectedOrigin: place.origin,
        expectedRPID: place.rpID,
      }
    );
  };
  return {
    listPasskeys: async (_asked, _signal, caller) => answer(await passkeys.of(teacherOf(caller).id)),
    beginPasskey: async (_asked, _signal, caller) => {
      const place = passkeyPlace(parts.where);
      if (!place) return none();
      const { id, name } = teacherOf(caller);
      const { generateRegistrationOptions } = await load();
      const options = await generateRegistrationOptions({
        ...{ rpName: NAME, rpID: place.rpID, userName: name || NAME, userDisplayName: name },
        userID: new TextEncoder().encode(id),
        excludeCredentials: (await passkeys.of(id)).map((each) => ({ id: each.id })),
        authenticatorSelection: { residentKey: 'required', userVerification: 'required' },
      });
      await passkeys.ask(options.challenge, id);
      return answer({ options: { ...options } });
    },
    addPasskey: async ({ body }, _signal, caller) => {
      const teacher = teacherOf(caller).id;
      const check = expected(teacher);
      if (!check) return none();
      const { verifyRegistrationResponse } = await load();
      const response = body as unknown as RegistrationResponseJSON;
      const found = await orNull(() => verifyRegistrationResponse({ ...check, response }));
      if (!found?.verified) return wrong();
      const { id, publicKey, counter } = found.registrationInfo.credential;
      return (await passkeys.add({ id, teacher, publicKey, counter }))
        ? answer(await passkeys.of(teacher))
        : wrong();
    },
    removePasskey: async ({ params }, _signal, caller) =>
      (await passkeys.remove(params.passkey, teacherOf(caller).id))
        ? answer(null)
        : refuse('no-such-passkey', {}),
    askPasskey: async (_asked, _signal, { ip }) => {
      const place = passkeyPlace(parts.where);
      if (!place) return none();
      const waitSeconds = attempts.waitSeconds(ip);
      if (waitSeconds > 0) return refuse('too-often', { waitSeconds });
      attempts.failed(ip);
      const { generateAuthenticationOptions } = await load();
      const options = await generateAuthenticationOptions({ rpID: place.rpID, userVerification: 'required' });
      await passkeys.ask(options.challenge, null);
      return answer({ options: { ...options } });
    },
    usePasskey: async ({ body }, _signal, { ip }) => {
      const check = expected(null);
      if (!check) return none();
      const credential = await passkeys.read(body.id);
      if (!credential) return wrong();
      const { verifyAuthenticationResponse } = await load();
      const response = body as unknown as AuthenticationResponseJSON;
      const found = await orNull(() => verifyAuthenticationResponse({ ...check, response, credential }));
      if (!found?.verified) return wrong();
      await passkeys.used(credential.id, found.authenticationInfo.newCounter);
      attempts.forgive(ip);
      const session = await signIn.admit(credential.teacher);
      return {
        ...answer(await toldOf(parts, await signIn.whoIs(session))),
        ...{ session, by: credential.teacher },
      };
    },
  } satisfies Partial<Handlers>;
}
